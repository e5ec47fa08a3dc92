import { type Html, html } from '../html.ts';
import { COURSE, personOf } from '../scenario.ts';
import type { Activity, School } from '../school.ts';
import type { Session } from '../sessions.ts';
import { schoolPage } from './layout.ts';

const worth = ({ points }: Activity): string =>
  points === null ? 'practice, no marks' : `${points} points`;

const entry = (activity: Activity): Html => html`
<li><a href="/course/${activity.id}">${activity.title}</a> <span class="worth">${worth(activity)}</span>
<p>${activity.description}</p></li>`;

export const coursePage = (school: School, session: Session): string =>
  schoolPage(
    session,
    '/course',
    COURSE.title,
    html`<ol class="activities">${school.activities.map(entry)}</ol>`,
  );

const launchAddress = (activity: Activity, review: string | undefined, target: string): string => {
  const query = new URLSearchParams({ target, ...(review === undefined ? {} : { review }) });
  return `/launch/${activity.id}?${query}`;
};

const heading = (activity: Activity, review: string | undefined): string => {
  if (review === undefined) return activity.title;
  const person = personOf(review);
  return person ? `${activity.title}: work of ${person.given}` : `${activity.title}: all work`;
};

/**
 * The activity in a frame as wide as the page and 600 px high. With `review` the frame is launched as the
 * gradebook's links do: for one child's work, or, when the text is empty, for the whole column.
 */
export const activityPage = (
  session: Session,
  activity: Activity,
  review: string | undefined,
): string =>
  schoolPage(
    session,
    `/course/${activity.id}`,
    heading(activity, review),
    html`
<p class="beside">${worth(activity)} · <a href="${launchAddress(activity, review, 'window')}" target="_blank" rel="opener">Open in a new tab</a></p>
<iframe src="${launchAddress(activity, review, 'iframe')}" title="${activity.title}" allow="autoplay" allowfullscreen></iframe>`,
  );
