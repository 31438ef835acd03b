import { openFiles } from '../state/open-files.ts';
import { usePage } from '../state/page.ts';
import { say } from '../words/say.ts';

/** A recording, a lesson, or both, from a file of this computer: it needs nothing but this page. */
export function FileOpener() {
  const page = usePage();
  return (
    <label class="small file-opener">
      {say('Open a recording or a lesson from a file, or drop it on this page')}
      <input
        type="file"
        multiple
        accept=".jsonl,.json"
        class="unseen"
        data-testid="open-file"
        onChange={(event) => {
          const { files } = event.currentTarget;
          if (files) void openFiles(page, [...files]);
          event.currentTarget.value = '';
        }}
      />
    </label>
  );
}
