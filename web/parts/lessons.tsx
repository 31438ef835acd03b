import { useEffect, useState } from 'preact/hooks';
import { type LessonList, lessonListSchema } from '../../shared/lesson/lesson.ts';
import { openLesson } from '../state/open-files.ts';
import { usePage } from '../state/page.ts';
import { say } from '../words/say.ts';

/** The lessons that come with the page: recordings with the word of a teacher, each with a true shape that is known. */
export function Lessons() {
  const page = usePage();
  const [list, setList] = useState<LessonList | null>(null);
  useEffect(() => void askLessons().then(setList), []);
  if (!list) return null;
  return (
    <section aria-labelledby="lessons-title">
      <h2 id="lessons-title">{say('Lessons')}</h2>
      <ol class="lessons" data-testid="lessons">
        {list.map(({ id, title, about }, k) => (
          <li key={id}>
            <button
              type="button"
              class="control"
              data-testid={`lesson-${id}`}
              onClick={() => void openLesson(page, id)}
            >
              <span class="word" lang="en">{`${k + 1}  ${title}`}</span>
              <span class="hint" lang="en">
                {about}
              </span>
            </button>
          </li>
        ))}
      </ol>
    </section>
  );
}

async function askLessons(): Promise<LessonList | null> {
  try {
    const response = await fetch('lessons/lessons.json');
    const parsed = lessonListSchema.safeParse(await response.json());
    return parsed.success ? parsed.data : null;
  } catch {
    return null;
  }
}
