import { Argument, Command } from 'commander';

/** What may follow on a way of commands: their names with what they do, and their options. */
interface Place {
  /** Names of commands from the program down: '' for the program itself, 'job add'. */
  readonly path: string;
  readonly commands: readonly { readonly name: string; readonly what: string }[];
  readonly options: readonly { readonly flag: string; readonly what: string }[];
}

const shells: Record<string, (places: readonly Place[]) => string> = { bash, zsh, fish };

/** `wayscribe completion SHELL`: what a shell needs to complete commands and options. */
export function completionCommand(): Command {
  return new Command('completion')
    .description('print what lets a shell complete commands and options')
    .addArgument(new Argument('<shell>').choices(Object.keys(shells)))
    .action((shell: string, _options: unknown, command: Command) => {
      console.log(shells[shell]!(placesOf(command.parent!, [])));
    });
}

function placesOf(command: Command, path: readonly string[]): Place[] {
  const { options, commands } = command;
  const here = {
    path: path.join(' '),
    commands: commands.map((below) => ({ name: below.name(), what: below.description() })),
    options: [
      ...options.map(({ long, description }) => ({ flag: long!, what: description })),
      { flag: '--help', what: 'display help' },
    ],
  };
  return [here, ...commands.flatMap((below) => placesOf(below as Command, [...path, below.name()]))];
}

function wordsOf({ commands, options }: Place): string {
  return [...commands.map(({ name }) => name), ...options.map(({ flag }) => flag)].join(' ');
}

/** Finds the place from the words before the cursor; the same lines for both shells of this family. */
function walk(places: readonly Place[]): string {
  const known = places.filter(({ path }) => path).map(({ path }) => `"${path}"`);
  return `    case "$place\${place:+ }$word" in
      ${known.join('|')}) place="$place\${place:+ }$word" ;;
    esac`;
}

function bash(places: readonly Place[]): string {
  return `# For bash: source <(wayscribe completion bash)
_wayscribe() {
  local place="" word offered=""
  for word in "\${COMP_WORDS[@]:1:COMP_CWORD-1}"; do
${walk(places)}
  done
  case "$place" in
${places.map((place) => `    "${place.path}") offered="${wordsOf(place)}" ;;`).join('\n')}
  esac
  COMPREPLY=($(compgen -W "$offered" -- "\${COMP_WORDS[COMP_CWORD]}"))
}
complete -o default -F _wayscribe wayscribe`;
}

function zsh(places: readonly Place[]): string {
  return `#compdef wayscribe
# For zsh: source <(wayscribe completion zsh), after compinit
_wayscribe() {
  local place="" word
  for word in "\${(@)words[2,CURRENT-1]}"; do
${walk(places)}
  done
  case "$place" in
${places.map((place) => `    "${place.path}") compadd -- ${wordsOf(place)} ;;`).join('\n')}
  esac
  _files
}
compdef _wayscribe wayscribe`;
}

function fish(places: readonly Place[]): string {
  const quoted = (text: string) => `'${text.replace(/[\\']/g, '\\$&')}'`;
  const lines = places.flatMap(({ path, commands, options }) => {
    const names = path ? path.split(' ') : [];
    const below = commands.map(({ name }) => name).join(' ');
    const seen = names.map((name) => `__fish_seen_subcommand_from ${name}`);
    const notYet = below ? [`not __fish_seen_subcommand_from ${below}`] : [];
    const when = [...seen, ...notYet].join('; and ');
    const start = `complete -c wayscribe${when ? ` -n ${quoted(when)}` : ''}`;
    return [
      ...commands.map(({ name, what }) => `${start} -a ${name} -d ${quoted(what)}`),
      ...options.map(({ flag, what }) => `${start} -l ${flag.slice(2)} -d ${quoted(what)}`),
    ];
  });
  return ['# For fish: wayscribe completion fish | source', ...lines].join('\n');
}
