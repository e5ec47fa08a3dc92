import { css } from 'lit';

/** The page fits its frame: the mat takes what sentence, tray and moves leave; these are never lower than what is in them, and a frame that is too low scrolls. */
export const workPageStyles = css`
  :host {
    display: block;
  }
  .page {
    display: grid;
    grid-template-rows: max-content minmax(272px, 1fr) max-content max-content;
    gap: 10px;
    box-sizing: border-box;
    height: 100dvh;
    max-width: 1500px;
    margin: 0 auto;
    padding: 10px 16px;
    user-select: none;
    -webkit-user-select: none;
  }
  .page.over {
    grid-template-rows: max-content minmax(430px, 1fr);
  }
  header {
    display: flex;
    gap: 16px;
    align-items: flex-start;
    justify-content: space-between;
    min-height: 76px;
  }
  h1 {
    margin: 0;
    font-size: 1.25rem;
    font-weight: 400;
    line-height: 1.25;
    text-wrap: pretty;
  }
  h1 {
    display: flow-root;
  }
  h1.again {
    color: var(--again);
  }
  .under {
    display: flex;
    flex-wrap: wrap;
    gap: 2px 14px;
    align-items: center;
    margin: 2px 0 0;
    color: var(--soft);
    font-size: 0.9375rem;
  }
  .under b {
    font-weight: 400;
    white-space: nowrap;
  }
  .saving {
    display: inline-flex;
    gap: 3px;
    align-items: center;
  }
  .saving svg {
    flex: none;
    width: 18px;
    height: 18px;
  }
  .saving.loud {
    padding: 2px 10px 2px 6px;
    border-radius: 8px;
    background: var(--again-tint);
    color: var(--again);
  }
  .notice {
    display: flex;
    flex-wrap: wrap;
    gap: 4px 12px;
    align-items: center;
    margin: 0;
    padding: 4px 4px 4px 12px;
    border-radius: 10px;
    background: var(--again-tint);
    color: var(--again);
  }
  .notice span {
    flex: 1;
    min-width: 12em;
  }
  .page.noticed {
    grid-template-rows: max-content max-content minmax(272px, 1fr) max-content max-content;
  }
  .page.over.noticed {
    grid-template-rows: max-content max-content minmax(430px, 1fr);
  }
  .said {
    flex: 1;
  }
  .tools {
    display: flex;
    gap: 8px 12px;
    align-items: center;
    justify-content: flex-end;
  }
  .buttons {
    display: flex;
    flex-wrap: wrap;
    gap: 6px;
  }
  .check {
    display: inline-flex;
    gap: 6px;
    align-items: center;
    padding: 0 12px 0 8px;
  }
  .middle {
    display: grid;
    grid-template: minmax(0, 1fr) / minmax(0, 1fr) 232px;
    gap: 14px;
    min-height: 0;
  }
  .middle.alone {
    grid-template-columns: minmax(0, 1fr);
    justify-items: center;
  }
  .middle.alone > * {
    width: 100%;
  }
  .over header {
    min-height: 0;
  }
  .page.beside {
    grid-template-rows: max-content minmax(272px, 1fr) max-content;
  }
  .beside .middle {
    grid-template-columns: minmax(0, 1fr) 520px;
  }
  /* A sheet that is higher than its room is scrolled; the pen stays in sight. */
  pw-paper {
    align-self: start;
    box-sizing: border-box;
    max-height: 100%;
    padding-top: 4px;
    overflow: auto;
  }
  .tray {
    box-sizing: border-box;
    min-height: 118px;
    padding: 10px 12px;
    border: 1.5px solid var(--cloth-line);
    border-radius: 12px;
    background: var(--tray);
  }
  .tray .ask {
    margin: 0 0 8px;
  }
  .line {
    display: flex;
    flex-wrap: wrap;
    gap: 8px;
    align-items: center;
    margin-bottom: 8px;
  }
  .grow {
    flex: 1;
  }
  .chips {
    display: flex;
    flex-wrap: wrap;
    gap: 6px;
  }
  .answer {
    box-sizing: border-box;
    min-width: 96px;
    min-height: 44px;
    padding: 6px 10px;
    border: 2px solid var(--focus);
    border-radius: 8px;
    background: var(--surface);
    font-size: 1.375rem;
    line-height: 1.3;
    text-align: right;
  }
  .line .again {
    border: 3px solid var(--again);
    color: var(--again);
    background: var(--again-tint);
    box-shadow: 3px 6px 5px rgb(0 0 0 / 40%);
    transform: translateY(-3px);
  }
  .picture {
    flex: none;
  }
  .picture text {
    fill: var(--ink);
    font-size: 16px;
    text-anchor: middle;
  }
  .picture .cell {
    fill: var(--surface);
    stroke: var(--line);
    stroke-width: 1.2;
  }
  .said .picture {
    float: left;
    width: 96px;
    height: 49px;
    margin-right: 12px;
  }
  .picture .square {
    fill: var(--tens);
    stroke: var(--tens-edge);
    stroke-width: 2.5;
  }
  .picture .other {
    fill: none;
    stroke: var(--line);
    stroke-width: 1.2;
  }
  .picture .bead {
    fill: var(--gold);
    stroke: var(--bead-line);
    stroke-width: 1.4;
  }
  .picture .way {
    fill: none;
    stroke: var(--ink);
    stroke-width: 2.5;
    stroke-linecap: round;
    stroke-linejoin: round;
  }
  .big {
    display: block;
    min-width: 240px;
    min-height: 56px;
    margin: 16px auto;
    font-size: 1.125rem;
  }
  nav {
    display: grid;
    grid-auto-flow: column;
    grid-auto-columns: 1fr;
    gap: 8px;
  }
  nav button {
    position: relative;
    padding: 0 4px;
    border-radius: 22px;
  }
  nav .next {
    border: 3px solid var(--ink);
    font-weight: 700;
  }
  nav .next::after {
    content: '';
    position: absolute;
    top: -7px;
    left: 50%;
    width: 10px;
    height: 10px;
    border: 2px solid var(--ink);
    border-radius: 50%;
    background: var(--gold);
    translate: -50% 0;
  }
  .ghost {
    position: fixed;
    z-index: 20;
    top: 0;
    left: 0;
    display: grid;
    gap: 2px;
    pointer-events: none;
    will-change: transform;
    transform: translate3d(-999px, 0, 0);
  }
  .ghost.tile {
    place-items: center;
    width: 44px;
    height: 44px;
    border: 1.5px solid var(--line);
    border-radius: 8px;
    background: var(--tile-beside);
    font-size: 1.375rem;
    box-shadow: 0 6px 10px rgb(0 0 0 / 35%);
  }
  dialog {
    max-width: min(520px, 90vw);
    border: 2px solid var(--ink);
    border-radius: 14px;
    background: var(--surface);
    color: var(--ink);
  }
  dialog h2 {
    margin: 0 0 10px;
    font-size: 1.25rem;
  }
  dialog::backdrop {
    background: rgb(0 0 0 / 45%);
  }
  dl {
    display: grid;
    grid-template-columns: auto 1fr;
    gap: 6px 16px;
    margin: 0 0 14px;
  }
  dt {
    font-weight: 700;
  }
  dd {
    margin: 0;
  }
  .at-record .middle {
    grid-template-columns: minmax(0, 1fr) 330px;
  }
  @media (min-width: 1000px) {
    .middle {
      grid-template-columns: minmax(0, 1fr) 300px;
    }
    h1 {
      font-size: 1.375rem;
    }
    header {
      min-height: 56px;
    }
  }
  /* Without a mat beside it the paper is what the child works on: it takes the room. */
  @media (min-width: 1000px) and (min-height: 700px) {
    .alone pw-paper {
      zoom: 1.25;
    }
  }
  @media (min-width: 1200px) and (min-height: 820px) {
    .alone pw-paper {
      zoom: 1.5;
    }
  }
  @media (min-width: 701px) {
    .read .middle:not(.alone),
    .sum .middle:not(.alone),
    .write .middle:not(.alone) {
      grid-template-columns: minmax(0, 1fr) fit-content(50%);
    }
    .middle:not(.alone) pw-paper {
      min-width: 232px;
    }
  }
  @media (max-width: 700px) {
    .page {
      gap: 8px;
      padding: 8px 10px;
    }
    header {
      flex-direction: column;
      gap: 6px;
      min-height: 126px;
    }
    .tools {
      width: 100%;
      justify-content: space-between;
    }
    .page .middle {
      grid-template-columns: minmax(0, 1fr);
      grid-template-rows: minmax(0, 1fr) auto;
    }
    pw-paper {
      align-self: end;
    }
    .page:not(.read, .write, .sum) pw-paper {
      display: none;
    }
    .tray {
      min-height: 0;
    }
    /* Moves are as wide as their words; where these find no room, they go on below. */
    nav {
      display: flex;
      flex-wrap: wrap;
      gap: 4px;
    }
    nav button {
      flex: 1 0 auto;
      min-width: max-content;
      border-radius: 12px;
      font-size: 0.875rem;
    }
    nav.many button {
      flex-basis: 22%;
    }
  }
`;
