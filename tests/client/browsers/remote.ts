/** One step of an input source as the W3C's WebDriver writes it, in CSS pixels of the viewport. */
export type InputStep =
  | { type: 'pointerMove'; x: number; y: number; duration: number }
  | { type: 'pointerDown' | 'pointerUp'; button: 0 }
  | { type: 'keyDown' | 'keyUp'; value: string }
  | { type: 'pause'; duration: number };

export interface PointerSource {
  type: 'pointer';
  id: string;
  parameters: { pointerType: 'mouse' | 'touch' | 'pen' };
  actions: InputStep[];
}

export interface KeySource {
  type: 'key';
  id: string;
  actions: InputStep[];
}

/** A browser with one page, driven from outside by the W3C's protocol that it speaks. */
export interface Remote {
  readonly name: string;
  go(address: string): Promise<void>;
  /** The inner size of the window, as near as the browser can: WebKit's is never narrower than 480. */
  resize(width: number, height: number): Promise<void>;
  /** The value of an expression in the page, which may be a promise of text. */
  evaluate(expression: string): Promise<string>;
  perform(source: PointerSource | KeySource): Promise<void>;
  close(): Promise<void>;
}
