import type { CDPSession } from 'playwright-core';

/** One thing of a page as the browser tells it to a screen reader. */
export interface Told {
  readonly id: number;
  readonly role: string;
  /** Of what is live, its whole text. */
  readonly name: string;
  /** What a reader says beside them: "pressed", "disabled", "expanded"; empty: none of these. */
  readonly state: string;
  readonly focusable: boolean;
  readonly focused: boolean;
  /** Its text is said aloud when it changes. */
  readonly live: boolean;
}

const readTree = async (debug: CDPSession) =>
  (await debug.send('Accessibility.getFullAXTree')).nodes;

type Computed = Awaited<ReturnType<typeof readTree>>[number];

const STATES = ['pressed', 'expanded', 'selected', 'disabled'];

const property = ({ properties = [] }: Computed, name: string): unknown =>
  properties.find((one) => one.name === name)?.value.value;

/** The accessibility tree that the browser computes, through every shadow tree, in the order of reading. */
export const treeOf = async (debug: CDPSession): Promise<Told[]> => {
  const all = await readTree(debug);
  const byId = new Map(all.map((node) => [node.nodeId, node]));
  const within = (node: Computed): Computed[] => [
    node,
    ...(node.childIds ?? []).flatMap((id) => {
      const child = byId.get(id);
      return child === undefined ? [] : within(child);
    }),
  ];
  const text = (node: Computed): string =>
    within(node)
      .filter(({ role }) => role?.value === 'StaticText')
      .map(({ name }) => name?.value)
      .join('');
  return all
    .slice(0, 1)
    .flatMap(within)
    .filter(({ ignored }) => !ignored)
    .map((node) => {
      const role = String(node.role?.value);
      const live = property(node, 'live') === 'polite' && role === 'status';
      return {
        id: node.backendDOMNodeId ?? -1,
        role,
        name: live ? text(node) : String(node.name?.value ?? ''),
        state: STATES.filter((name) => `${property(node, name)}` === 'true').join(', '),
        focusable: property(node, 'focusable') === true,
        focused: property(node, 'focused') === true && role !== 'RootWebArea',
        live,
      };
    });
};
