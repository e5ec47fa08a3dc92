/**
 * Which modules travel together: few files, because small ones compress badly, and none that a stage does not need.
 * The first group that matches takes a module; what matches none goes where the bundler finds it best.
 */
export const CHUNKS = [
  // What every page needs, the class's too.
  {
    name: 'base',
    test: /preload-helper|node_modules\/(@lit|lit)|client\/(words\/(?!number|choice|class|help|result|e[ns]\.|pseudo|many)|ui\/(beads|buttons|message)|api\/(http|session|launch)|launch\/(confirm|forgetful|open-tab|kept)|message-words|work\/marks-text)/,
  },
  // A square that is opened: fetched ahead, and needed at the first that is.
  { name: 'opened', test: /client\/mat\/(open-square|open-square-styles|ten)\.ts/ },
  // Bars: laying, counting, exchanging, sliding.
  {
    name: 'bars',
    test: /engine\/(judge\/(laying|reading|exchanging|sliding|settling)|stages\/(mending|with-bars))\.ts|client\/(mat\/tray|work\/tools\/(count|lay|slide))\.ts/,
  },
  // Rows that are said.
  {
    name: 'said',
    test: /engine\/(judge\/saying|stages\/bars)\.ts|client\/work\/tools\/row\.ts/,
  },
  // Lines of digits with what is carried.
  {
    name: 'written',
    test: /engine\/(judge\/paper\/(claims|pens|columns|carrying|kept-line|reading-line|row-steps|rows-written|recorded)|stages\/line-moves)\.ts/,
  },
  // The work itself, at whatever stage, and the mat.
  {
    name: 'work',
    test: /engine\/(?!judge\/(paper\/(?!lines)|facts|fact-shape|prompting)|stages\/(?!known|load|prompts|captions|bar-moves|point-moves|tile-moves))|client\/(work\/(?!stages\/|tools\/(?!(parts|product|write|tiles)\.ts)|hints|result|round|step-bead|marks-text|keys-list|belonging|another|choice|see-worked)|mat\/|api\/attempt|ui\/(icons|keypad|progress|weave))/,
  },
];
