import { Command } from 'commander';
import { folderOption, homeFolder, profilesOption } from './options.ts';

/** `wayscribe profiles`: which instruments are understood, and help for whoever describes another one. */
export function profilesCommand(): Command {
  return new Command('profiles')
    .description('list the instrument profiles, check one, or print their JSON Schema')
    .addCommand(listCommand(), { isDefault: true })
    .addCommand(checkCommand())
    .addCommand(schemaCommand());
}

function listCommand(): Command {
  return new Command('list')
    .description('list the shipped profiles and your own')
    .addOption(folderOption(homeFolder))
    .addOption(profilesOption())
    .action(async (options: { folder: string; profiles?: string }) => {
      const { loadProfiles, profilesFolder } = await import('../instruments/own-profiles.ts');
      const { book, problems } = await loadProfiles(profilesFolder(options));
      const width = Math.max(...book.all.map(({ id }) => id.length));
      for (const { id, title } of book.all) console.log(`${id.padEnd(width)}  ${title}`);
      for (const { message } of problems) console.error(`Left out: ${message}`);
      if (problems.length > 0) process.exitCode = 1;
    });
}

/** Exit status 0 when the profile can be used, 1 when something in it is wrong. */
function checkCommand(): Command {
  return new Command('check')
    .description('check a profile: its form, its contradictions, its examples')
    .argument('<file>', 'a profile')
    .action(async (file: string) => {
      const { readProfileFile } = await import('../instruments/own-profiles.ts');
      const { checkProfile } = await import('../../protocols/read-profile.ts');
      const { profile, findings } = checkProfile(await readProfileFile(file));
      for (const { kind, place, message } of findings) {
        console.log(`${kind === 'error' ? 'Wrong' : 'Note'}: ${place}: ${message}`);
      }
      if (profile) {
        console.log(
          `${profile.id} is sound: ${profile.examples.length} examples say what they are said to say.`,
        );
      } else process.exitCode = 1;
    });
}

function schemaCommand(): Command {
  return new Command('schema')
    .description('print the JSON Schema of a profile, for an editor that completes and checks')
    .action(async () => {
      const { z } = await import('zod');
      const { profileSchema } = await import('../../protocols/profile.ts');
      console.log(JSON.stringify(z.toJSONSchema(profileSchema, { io: 'input' }), null, 2));
    });
}
