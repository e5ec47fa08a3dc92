import { css } from 'lit';

/** Squares as wide as a finger where there is room for them; small screens leave out what is only printed. */
export const paperStyles = css`
  :host {
    /* Places run from right to left in every script. */
    direction: ltr;
    display: block;
    min-width: 0;
  }
  .box {
    container-type: inline-size;
  }
  .sheet {
    --cell: min(44px, calc((100cqw - 22px) / var(--cells)));
    box-sizing: border-box;
    width: fit-content;
    margin-left: auto;
    padding: 10px;
    border: 1px solid var(--rule);
    border-radius: 8px;
    background: var(--surface);
  }
  :host([whole]) .sheet {
    margin: auto;
  }
  /* Where it is written on, no place is narrower than a finger; what finds no room is scrolled to, the units first. */
  :host([writes]) .box {
    container-type: normal;
    overflow: auto hidden;
    direction: rtl;
    overscroll-behavior: contain;
  }
  :host([writes]) .sheet {
    --cell: 44px;
    padding: 10px 8px;
    direction: ltr;
  }
  .line {
    position: relative;
    display: flex;
    justify-content: flex-end;
    font-size: 1.375rem;
    line-height: 32px;
  }
  .line span {
    box-sizing: border-box;
    width: var(--cell);
    height: 33px;
    border: solid var(--rule);
    border-width: 1px 0 0 1px;
    text-align: center;
  }
  .line span:last-child {
    border-right-width: 1px;
  }
  .rule {
    height: 2.5px;
    margin: 2px 0 2px auto;
    width: calc(var(--cell) * var(--cells));
    background: var(--ink);
  }
  .line.again {
    color: var(--again);
    font-weight: 700;
    background: var(--again-tint);
  }
  .line svg {
    position: absolute;
    top: 6px;
    left: 0;
    width: 20px;
    height: 20px;
  }
  .line button {
    position: relative;
    width: var(--cell);
    min-width: 0;
    padding: 0;
    border: 1.5px dashed var(--line);
    border-radius: 6px;
    background: var(--surface);
    font-size: 1.375rem;
  }
  small {
    position: absolute;
    top: 0;
    left: 3px;
    font-size: 0.8125rem;
    line-height: 1.1;
  }
  small::before {
    content: attr(data-digit);
  }
  .point {
    position: absolute;
    right: -4px;
  }
  .line button.written {
    border-style: solid;
  }
  .line button[aria-pressed='true'] {
    border: 3px solid var(--focus);
    background: var(--surface);
    color: var(--ink);
  }
  .line button.marked {
    border: 3px dashed var(--ink);
  }
  .line button.again {
    z-index: 1;
    color: var(--again);
    border: 3px solid var(--again);
    transform: translateY(-6px);
    background: var(--again-tint);
    box-shadow: 3px 8px 6px rgb(0 0 0 / 45%);
  }
  @media (max-width: 700px) {
    :host(:not([whole])) .printed,
    :host([row]) .later {
      display: none;
    }
  }
`;
