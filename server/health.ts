import { Router } from 'express';

/** `live`: the process answers. `ready`: it can also keep work. For probes; says nothing else. */
export function healthRoutes(ready: () => Promise<boolean>): Router {
  const router = Router();
  router.get('/live', (_req, res) => {
    res.json({ live: true });
  });
  router.get('/ready', (_req, res, next) => {
    ready().then((yes) => res.status(yes ? 200 : 503).json({ ready: yes }), next);
  });
  return router;
}
