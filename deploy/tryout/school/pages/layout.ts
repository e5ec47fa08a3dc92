import { type Html, html } from '../html.ts';
import { COURSE, calledName, PEOPLE, SCHOOL } from '../scenario.ts';
import type { Session } from '../sessions.ts';

const page = (title: string, body: Html): string =>
  html`<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${title} · ${SCHOOL.name}</title>
<link rel="stylesheet" href="/school.css">
</head>
<body>${body}</body>
</html>`.markup;

/** Who one is here, and one click to be somebody else: this school is for trying things out. */
const switcher = (session: Session, path: string): Html => html`
<form class="switcher" method="post" action="/enter" aria-label="Who you are">
<input type="hidden" name="back" value="${path}">
<span>You are</span>
${PEOPLE.map(
  (person) =>
    html`<button name="person" value="${person.id}" aria-pressed="${
      person.id === session.person.id ? 'true' : 'false'
    }">${calledName(person)}</button>`,
)}
</form>`;

export const schoolPage = (session: Session, path: string, title: string, body: Html): string =>
  page(
    title,
    html`
<header>
<p class="school">${SCHOOL.name}</p>
<nav aria-label="Course"><a href="/course">${COURSE.title}</a> <a href="/gradebook">Gradebook</a></nav>
${switcher(session, path)}
</header>
<main>
<h1>${title}</h1>
${body}
</main>`,
  );

export const entrancePage = (): string =>
  page(
    'Welcome',
    html`
<header><p class="school">${SCHOOL.name}</p></header>
<main>
<h1>Who comes in?</h1>
<p>A made-up school for trying things out on this computer. Nobody in it exists.</p>
<form class="entrance" method="post" action="/enter">
<input type="hidden" name="back" value="/course">
${PEOPLE.map(
  (person) =>
    html`<button name="person" value="${person.id}">${calledName(person)}<small>${
      person.role === 'Instructor' ? 'teacher' : 'child'
    }</small></button>`,
)}
</form>
</main>`,
  );

/** A short message inside a frame or a window. */
export const noticePage = (title: string, text: string): string =>
  page(
    title,
    html`<main><h1>${title}</h1><p>${text}</p><p><a href="/" target="_top">Back to the school</a></p></main>`,
  );
