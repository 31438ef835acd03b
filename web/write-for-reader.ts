import { type ComponentChild, type ComponentChildren, Fragment, options, type VNode } from 'preact';
import { written } from './words/reader.ts';

/** Attributes that a person reads or hears. */
const shown = ['title', 'aria-label', 'placeholder', 'alt', 'aria-valuetext'] as const;
/** Elements whose text is no language. */
const machine: ReadonlySet<string> = new Set(['code', 'pre', 'style', 'script']);

type Props = Record<string, unknown> & { children?: ComponentChildren };

/**
 * From now on all that the page draws is written in the reader's language as it is drawn. An element that says
 * `translate={false}` or names its `lang` keeps its own text.
 */
export function writeForReader(): void {
  const before = options.vnode;
  options.vnode = (vnode) => {
    if (isText(vnode)) write(vnode.props as Props);
    before?.(vnode);
  };
}

function isText({ type, props }: VNode): boolean {
  if (type === Fragment) return true;
  if (typeof type !== 'string' || machine.has(type)) return false;
  const { translate, lang } = props as Props;
  return translate !== false && lang === undefined;
}

function write(props: Props): void {
  for (const name of shown) {
    const text = props[name];
    if (typeof text === 'string') props[name] = written(text);
  }
  const { children } = props;
  if (typeof children === 'string') props.children = written(children);
  else if (Array.isArray(children)) props.children = joined(children);
}

/** Texts side by side are one sentence. It stands in the place of the first, so that nothing else changes its place. */
function joined(children: readonly ComponentChild[]): ComponentChild[] {
  const drawn = [...children];
  for (let first = 0; first < drawn.length; first++) {
    if (!isWords(drawn[first])) continue;
    let end = first + 1;
    while (end < drawn.length && isWords(drawn[end])) end++;
    const sentence = drawn.slice(first, end).join('');
    drawn.fill(null, first, end);
    drawn[first] = written(sentence);
    first = end;
  }
  return drawn;
}

function isWords(child: ComponentChild): boolean {
  return typeof child === 'string' || typeof child === 'number';
}
