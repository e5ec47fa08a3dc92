import { css, html, LitElement } from 'lit';
import { icon } from '../ui/icons.ts';
import { stitches, weaveStyles } from '../ui/weave.ts';

/**
 * A place for a tile at the mat's edge, with or without a tile. The host is the grid's cell.
 * Properties: `digit` (null: empty), `edge`, `label` (1, 10, 100), `hierarchy`, `family`, and the states `again`, `active`, `marked`.
 */
export class PwTile extends LitElement {
  static override properties = {
    digit: { attribute: false },
    edge: { reflect: true },
    label: {},
    hierarchy: { type: Number },
    family: { type: Number },
    again: { type: Boolean, reflect: true },
    active: { type: Boolean, reflect: true },
    marked: { type: Boolean, reflect: true },
  };
  static override styles = [
    weaveStyles,
    css`
      :host {
        position: relative;
        display: flex;
        flex-direction: column;
        align-items: center;
        justify-content: center;
        box-sizing: border-box;
        cursor: pointer;
        outline: none;
        -webkit-tap-highlight-color: transparent;
      }
      .place {
        flex: none;
        display: flex;
        gap: 2px;
        align-items: center;
        color: var(--soft);
        font-size: 0.875rem;
        line-height: 14px;
        /* Taller letters than digits would make the mat scroll downwards by their unused room. */
        overflow: clip;
      }
      .place::before {
        content: attr(data-label);
      }
      .slot,
      .tile {
        position: relative;
        box-sizing: border-box;
        flex: 0 1 52px;
        width: min(calc(100% - 6px), 52px);
        margin: 2px 0;
      }
      .slot {
        border: 1.5px dashed var(--cloth-line);
        border-radius: 7px;
      }
      .tile {
        display: grid;
        place-items: center;
        border: 1.5px solid var(--line);
        border-radius: 7px;
        background: var(--tile-below);
        color: var(--ink);
        font-size: 1.375rem;
        line-height: 1;
        box-shadow: 0 2px 0 var(--line);
        transition: transform var(--quick);
      }
      :host([edge='right']) .tile {
        background: var(--tile-beside);
      }
      :host([active]) .slot::after,
      :host([active]) .tile::after,
      :host([marked]) .slot::after,
      :host([marked]) .tile::after {
        content: '';
        position: absolute;
        inset: -4px;
        border: 2.5px dashed var(--ink);
        border-radius: 9px;
      }
      :host([again]) .tile {
        transform: translate(-2px, -6px);
        outline: 3px solid var(--again);
        box-shadow: 4px 8px 6px rgb(0 0 0 / 45%);
      }
      .mark {
        position: absolute;
        z-index: 1;
        top: -12px;
        left: -4px;
        color: var(--again);
        border: 2px solid var(--again);
        border-radius: 50%;
        background: var(--again-tint);
        line-height: 0;
      }
      .mark svg {
        width: 15px;
        height: 15px;
      }
      :host(:focus-visible) {
        z-index: 3;
        outline: 3px solid var(--focus);
        outline-offset: 1px;
        border-radius: 9px;
      }
    `,
  ];
  declare digit: number | null;
  declare edge: 'bottom' | 'right';
  declare label: string;
  declare hierarchy: number;
  declare family: number;
  declare again: boolean;
  declare active: boolean;
  declare marked: boolean;

  constructor() {
    super();
    this.digit = null;
    this.edge = 'bottom';
    this.label = '';
    this.hierarchy = 0;
    this.family = 0;
    this.again = false;
    this.active = false;
    this.marked = false;
  }

  protected override render() {
    return html`${
      this.digit === null
        ? html`<span class="slot"></span>`
        : html`<span class="tile">${this.digit}</span>`
    }<span class="place h${this.hierarchy}" data-label=${this.label} aria-hidden="true">${stitches(this.family)}</span>
    ${this.again ? html`<span class="mark">${icon('look')}</span>` : null}`;
  }
}

customElements.define('pw-tile', PwTile);
