import { json, type Request, type Response, Router } from 'express';
import { rescaled } from './grading.ts';
import { addLineItem, columnOf, type School } from './school.ts';
import { LINE_ITEM, LINE_ITEM_READ } from './scopes.ts';
import { accepts, carries, needs, noHandler, refuse } from './services.ts';
import type { LineItem } from './state.ts';
import { lineItemUrl } from './urls.ts';

const ITEM = 'application/vnd.ims.lis.v2.lineitem+json';
const CONTAINER = 'application/vnd.ims.lis.v2.lineitemcontainer+json';
const ONE = '/services/:course/lineitems/:item/lineitem';
const ALL = '/services/:course/lineitems';

export const itemOf = ({ state }: School, id: string | undefined): LineItem | undefined =>
  state.lineItems.find((item) => item.id === id);

const shown = (school: School, { id, ...rest }: LineItem) => ({
  id: lineItemUrl(school, id),
  ...rest,
  ...(rest.resourceLinkId === undefined ? {} : { ltiLinkId: rest.resourceLinkId }),
});

const typed = (response: Response, type: string): Response =>
  response.setHeader('Content-Type', `${type}; charset=utf-8`) as Response;

const FILTERS = [
  ['resource_link_id', 'resourceLinkId'],
  ['resource_id', 'resourceId'],
  ['tag', 'tag'],
] as const;

const filtered = (items: readonly LineItem[], query: Request['query']): LineItem[] =>
  items.filter((item) =>
    FILTERS.every(([asked, field]) => query[asked] === undefined || query[asked] === item[field]),
  );

const missing = (request: Request, response: Response): void =>
  refuse(request, response, 404, `Not Found: Grade item ${request.params.item} doesn't exist`);

const written = (body: Record<string, unknown>): Omit<LineItem, 'id'> | null => {
  const { label, scoreMaximum, resourceId, tag, resourceLinkId } = body;
  if (typeof label !== 'string' || label === '' || !(Number(scoreMaximum) > 0)) return null;
  return {
    label,
    scoreMaximum: Number(scoreMaximum),
    ...(typeof resourceId === 'string' ? { resourceId } : {}),
    ...(typeof tag === 'string' ? { tag } : {}),
    ...(typeof resourceLinkId === 'string' ? { resourceLinkId } : {}),
  };
};

const create = async (school: School, request: Request, response: Response): Promise<void> => {
  const asked = written(request.body);
  if (!asked) return refuse(request, response, 400, 'Incorrect line item');
  const linked = asked.resourceLinkId;
  if (linked !== undefined && !school.activities.some((one) => one.id === linked)) {
    return refuse(request, response, 403, 'Forbidden: not a link of this tool');
  }
  const { id } = addLineItem(school.state, asked);
  await school.save();
  typed(response.status(201), ITEM).send(JSON.stringify({ ...asked, id: lineItemUrl(school, id) }));
};

const rescale = ({ state }: School, item: LineItem, maximum: number): void => {
  if (maximum === item.scoreMaximum) return;
  const column = columnOf(state, item);
  const now = Math.floor(Date.now() / 1000);
  for (const [user, grade] of Object.entries(column)) {
    column[user] = rescaled(grade, maximum / item.scoreMaximum, now);
  }
};

/** A column as a whole is replaced; the link to an activity stays, the marks follow the points. */
const replace = async (school: School, request: Request, response: Response): Promise<void> => {
  const item = itemOf(school, request.params.item);
  if (!item) return missing(request, response);
  const asked = written(request.body);
  if (!asked) return refuse(request, response, 400, 'Incorrect line item');
  rescale(school, item, asked.scoreMaximum);
  const link = item.resourceLinkId === undefined ? {} : { resourceLinkId: item.resourceLinkId };
  school.state.lineItems[school.state.lineItems.indexOf(item)] = { id: item.id, ...asked, ...link };
  await school.save();
  typed(response, ITEM).send(JSON.stringify({ ...asked, id: lineItemUrl(school, item.id) }));
};

const remove = async (school: School, request: Request, response: Response): Promise<void> => {
  const item = itemOf(school, request.params.item);
  if (!item) return missing(request, response);
  school.state.lineItems.splice(school.state.lineItems.indexOf(item), 1);
  delete school.state.grades[item.id];
  await school.save();
  response.status(204).setHeader('Content-Type', 'text/html; charset=utf-8');
  response.end();
};

type Handler = (school: School, request: Request, response: Response) => Promise<void>;

export const lineItemRoutes = (school: School): Router => {
  const trouble = school.troubles.meet('lineItems');
  const mayRead = needs(school, LINE_ITEM, LINE_ITEM_READ);
  const mayWrite = needs(school, LINE_ITEM);
  const body = json({ type: ITEM });
  const run =
    (handler: Handler) =>
    (request: Request, response: Response, next: (error: unknown) => void): void =>
      void handler(school, request, response).catch(next);
  return Router()
    .get(ALL, trouble, accepts(CONTAINER, false), mayRead, (request, response) => {
      const items = filtered(school.state.lineItems, request.query);
      typed(response, CONTAINER).send(JSON.stringify(items.map((item) => shown(school, item))));
    })
    .get(ONE, trouble, accepts(ITEM, true), mayRead, (request, response) => {
      const item = itemOf(school, request.params.item);
      if (!item) return missing(request, response);
      typed(response, ITEM).send(JSON.stringify(shown(school, item)));
    })
    .post(ALL, trouble, carries(ITEM), mayWrite, body, run(create))
    .post(ONE, noHandler)
    .put(ONE, trouble, carries(ITEM), mayWrite, body, run(replace))
    .delete(ONE, trouble, mayWrite, run(remove));
};
