import { css } from 'lit';

/** Wide: the square beside its tools. Narrow: the square above them. */
export const openSquareStyles = css`
  :host {
    /* Places run from right to left in every script. */
    direction: ltr;
    display: block;
    container-type: size;
    min-height: 0;
    min-width: 0;
  }
  section {
    display: grid;
    grid-template-columns: minmax(0, 1fr) minmax(250px, 300px);
    gap: 14px;
    height: 100%;
  }
  .cloth {
    position: relative;
    display: flex;
    flex-direction: column;
    gap: 8px;
    box-sizing: border-box;
    min-height: 0;
    padding: 10px 16px 14px;
    border-width: 5px;
    border-style: solid;
    border-radius: 16px;
  }
  .cloth.again {
    outline: 3px solid var(--again);
    outline-offset: 2px;
  }
  h2,
  .label {
    display: flex;
    justify-content: space-between;
    align-items: center;
    margin: 0;
    color: var(--edge-colour);
    font-size: 1.125rem;
    font-weight: 700;
    line-height: 1.2;
  }
  .pile {
    position: relative;
    flex: 1;
    min-height: 0;
  }
  .pile.tall {
    overflow: hidden auto;
    overscroll-behavior: contain;
  }
  .bar-button {
    position: absolute;
    display: grid;
    place-items: center start;
    min-width: 0;
    min-height: 0;
    padding: 0 2px;
    border-color: transparent;
    background: transparent;
    touch-action: none;
  }
  .tall .bar-button {
    touch-action: pan-y;
  }
  .bar-button[aria-pressed='true'] {
    border: 3px solid var(--focus);
    background: var(--surface);
    color: var(--ink);
  }
  .bar-button text {
    fill: var(--ink);
    font-size: 14px;
    font-weight: 700;
    paint-order: stroke;
    stroke: var(--tint);
    stroke-width: 3px;
  }
  .empty {
    position: absolute;
    inset: 45% 16px auto;
    margin: 0;
    text-align: center;
  }
  .side {
    display: flex;
    flex-direction: column;
    gap: 8px;
    min-height: 0;
    overflow: auto;
    padding: 2px;
  }
  .neighbour {
    display: grid;
    grid-template-columns: auto auto 1fr;
    gap: 8px;
    align-items: center;
  }
  .neighbour [data-do='carryTens'] {
    grid-column: 1 / -1;
    justify-self: start;
  }
  .left {
    display: grid;
    gap: 2px;
    justify-items: start;
    width: 116px;
    min-height: 82px;
    padding: 5px 8px;
    border-width: 4px;
    border-style: solid;
  }
  .left .label {
    width: 100%;
    font-size: 0.875rem;
    text-align: left;
  }
  .arrow {
    line-height: 0;
  }
  .ten {
    display: grid;
    gap: 8px;
  }
  .buttons {
    display: flex;
    flex-wrap: wrap;
    gap: 6px;
  }
  .buttons button {
    padding: 0 10px;
  }
  .buttons .primary {
    flex: 1 1 auto;
  }
  .mould {
    display: block;
    width: 100%;
    max-width: 300px;
  }
  .mould circle,
  .mould rect {
    fill: none;
    stroke: var(--ink);
    stroke-dasharray: 2.500 2;
  }
  .mould rect {
    stroke-width: 1.600;
    stroke-dasharray: 4 3;
  }
  .typed {
    display: flex;
    gap: 8px;
    align-items: center;
    min-height: 46px;
    margin-bottom: 6px;
  }
  .typed span {
    flex: 1;
  }
  .answer {
    min-width: 48px;
    padding: 6px;
    border: 2px solid var(--focus);
    border-radius: 8px;
    background: var(--surface);
    font-size: 1.375rem;
    line-height: 1.2;
    min-height: 1.2em;
    text-align: center;
  }
  .asks {
    border-radius: 10px;
    outline: 3px dashed var(--ink);
    outline-offset: 4px;
  }
  .shut {
    flex: none;
    margin-top: auto;
  }
  .soft {
    margin: 0;
    color: var(--soft);
  }
  @container (max-width: 620px) {
    section {
      grid-template-columns: minmax(0, 1fr);
      grid-template-rows: minmax(180px, 1fr) auto;
      gap: 8px;
    }
    .cloth {
      padding: 6px 12px 8px;
    }
    .side {
      display: grid;
      grid-template-columns: 116px minmax(0, 1fr);
      gap: 8px 12px;
    }
    .neighbour {
      grid-template-columns: 1fr;
      align-content: start;
    }
    .neighbour .arrow {
      display: none;
    }
    .ten {
      align-content: start;
    }
    .pad,
    .shut {
      grid-column: 1 / -1;
    }
  }
`;
