import type { Locator } from 'playwright-core';

type Role = Parameters<Locator['getByRole']>[0];

export interface RoleOptions {
  readonly name?: string | RegExp;
  readonly exact?: boolean;
  readonly pressed?: boolean;
  readonly level?: number;
}

/** What the scripts ask of a thing on a page, whichever browser shows it. Playwright's locators are such things. */
export interface Thing {
  getByRole(role: Role, options?: RoleOptions): Thing;
  filter(by: { hasText: string }): Thing;
  first(): Thing;
  nth(index: number): Thing;
  count(): Promise<number>;
  isVisible(): Promise<boolean>;
  getAttribute(name: string): Promise<string | null>;
  boundingBox(): Promise<{ x: number; y: number; width: number; height: number } | null>;
  click(): Promise<void>;
  tap(): Promise<void>;
  dragTo(to: Thing): Promise<void>;
  waitFor(options?: { timeout?: number }): Promise<void>;
}

/** A child's page in some browser. Playwright's pages are such pages. */
export interface ChildPage {
  getByRole(role: Role, options?: RoleOptions): Thing;
  getByText(text: string, options?: { exact?: boolean }): Thing;
  evaluate<T>(look: () => T): Promise<T>;
  readonly keyboard: { press(key: string): Promise<void> };
}
