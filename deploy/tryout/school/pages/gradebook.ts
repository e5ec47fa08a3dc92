import { type Html, html } from '../html.ts';
import { CHILDREN, calledName, type Person, personOf } from '../scenario.ts';
import type { School } from '../school.ts';
import type { Session } from '../sessions.ts';
import type { AcceptedScore, Grade, LineItem } from '../state.ts';
import { schoolPage } from './layout.ts';

const isTeacher = ({ person }: Session): boolean => person.role === 'Instructor';

const head = (item: LineItem, teacher: boolean): Html => {
  const label = html`${item.label}<small>of ${item.scoreMaximum}</small>`;
  return teacher && item.resourceLinkId !== undefined
    ? html`<th scope="col"><a href="/course/${item.resourceLinkId}?review=">${label}</a></th>`
    : html`<th scope="col">${label}</th>`;
};

const mark = (item: LineItem, child: Person, grade: Grade | undefined): Html => {
  if (!grade || grade.final === null) return html`<span class="none">–</span>`;
  const text = html`<strong>${grade.final}</strong>`;
  const shown =
    item.resourceLinkId === undefined
      ? text
      : html`<a href="/course/${item.resourceLinkId}?review=${child.id}">${text}</a>`;
  const signs = [grade.overridden ? 'set by hand' : '', grade.locked ? 'locked' : ''];
  const sign = signs.filter(Boolean).join(', ');
  return html`${shown}${sign ? html` <small>${sign}</small>` : null}${
    grade.comment === null ? null : html`<p>${grade.comment}</p>`
  }`;
};

const byHand = (item: LineItem, child: Person, grade: Grade | undefined): Html => html`
<details><summary>Change</summary><form method="post" action="/gradebook/mark">
<input type="hidden" name="item" value="${item.id}"><input type="hidden" name="child" value="${child.id}">
<label>Mark <input name="mark" type="number" step="any" min="0" max="${item.scoreMaximum}" value="${
  grade?.final ?? ''
}"></label>
<button>Set by hand</button>
${grade?.overridden ? html`<button name="release" value="yes">Back to the activity's mark</button>` : null}
</form></details>`;

const row = ({ state }: School, child: Person, teacher: boolean): Html => html`
<tr><th scope="row">${calledName(child)}</th>
${state.lineItems.map((item) => {
  const grade = state.grades[item.id]?.[child.id];
  return html`<td>${mark(item, child, grade)}${teacher ? byHand(item, child, grade) : null}</td>`;
})}</tr>`;

const logLine = ({ state }: School, score: AcceptedScore): Html => {
  const label = state.lineItems.find((item) => item.id === score.lineItem)?.label ?? score.lineItem;
  const given =
    score.scoreGiven === null ? 'no score' : `${score.scoreGiven} of ${score.scoreMaximum}`;
  return html`<tr><td><time datetime="${score.at}">${score.at.slice(0, 19).replace('T', ' ')}</time></td>
<td>${personOf(score.userId)?.given ?? score.userId}</td><td>${label}</td><td>${given}</td>
<td>${score.comment ?? ''}</td><td>${score.timestamp}</td></tr>`;
};

const log = (school: School, scores: readonly AcceptedScore[]): Html => html`
<h2>Scores that arrived</h2>
${
  scores.length === 0
    ? html`<p>None yet.</p>`
    : html`<div class="wide"><table><thead><tr><th scope="col">Arrived (UTC)</th><th scope="col">Child</th><th scope="col">Column</th>
<th scope="col">Score</th><th scope="col">Comment</th><th scope="col">Time of the work</th></tr></thead>
<tbody>${[...scores].reverse().map((score) => logLine(school, score))}</tbody></table></div>`
}`;

/** The teacher sees the class, a child their own row. */
export const gradebookPage = (school: School, session: Session): string => {
  const teacher = isTeacher(session);
  const children = CHILDREN.filter((child) => teacher || child.id === session.person.id);
  const scores = school.state.accepted.filter(({ userId }) =>
    children.some((child) => child.id === userId),
  );
  return schoolPage(
    session,
    '/gradebook',
    'Gradebook',
    html`
<div class="wide"><table class="marks"><thead><tr><th scope="col">Child</th>
${school.state.lineItems.map((item) => head(item, teacher))}</tr></thead>
<tbody>${children.map((child) => row(school, child, teacher))}</tbody></table></div>
${log(school, scores)}`,
  );
};
