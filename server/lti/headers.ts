import type { Response } from 'express';

/** What a page may load: everything from our own origin, nothing inline, and who may show it in a frame. */
export function pagePolicy(framing: readonly string[]): string {
  return [
    "default-src 'none'",
    "script-src 'self'",
    "style-src 'self'",
    "font-src 'self'",
    "img-src 'self' data:",
    "connect-src 'self'",
    "form-action 'self'",
    "base-uri 'none'",
    `frame-ancestors ${["'self'", ...framing].join(' ')}`,
  ].join('; ');
}

/** A page that was made for one person: not kept, not told to others, framed by the platform only. */
export function sendPage(res: Response, status: number, policy: string, html: string): void {
  // A frame guard of an older kind knows no list, and a page in a window must reach the one that opened it.
  for (const name of ['X-Frame-Options', 'Cross-Origin-Opener-Policy']) res.removeHeader(name);
  res.setHeader('Content-Security-Policy', policy);
  res.setHeader('Cache-Control', 'no-store');
  res.setHeader('Referrer-Policy', 'no-referrer');
  res.setHeader('X-Content-Type-Options', 'nosniff');
  res.status(status).type('html').send(html);
}
