import type { Reopen } from '../api/launch.ts';

/** Starts the sign-in again in a tab of its own, where cookies are kept. Call it from a press: it opens a window. */
export function openInTab({ action, fields }: Reopen): void {
  const form = document.createElement('form');
  form.method = 'post';
  form.action = action;
  form.target = '_blank';
  form.hidden = true;
  for (const [name, value] of Object.entries(fields)) form.append(field(name, value));
  document.body.append(form);
  form.submit();
  form.remove();
}

function field(name: string, value: string): HTMLInputElement {
  const input = document.createElement('input');
  input.type = 'hidden';
  input.name = name;
  input.value = value;
  return input;
}
