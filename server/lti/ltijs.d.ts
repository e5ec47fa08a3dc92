/** The part of ltijs 5.9.9 that is used; it brings no types of its own. */
declare module 'ltijs' {
  import type { NextFunction, Request, RequestHandler, Response } from 'express';

  /** What replaces its persistence. `secret` is false for what it does not want encrypted. */
  export interface DatabasePlugin {
    setup(): Promise<boolean>;
    Close(): Promise<boolean>;
    Get(secret: string | false, kind: string, query?: Query): Promise<Query[] | false>;
    Insert(secret: string | false, kind: string, item: Query, index?: Query): Promise<boolean>;
    Replace(
      secret: string | false,
      kind: string,
      query: Query,
      item: Query,
      index?: Query,
    ): Promise<boolean>;
    Modify(secret: string | false, kind: string, query: Query, changes: Query): Promise<boolean>;
    Delete(kind: string, query: Query): Promise<boolean>;
  }

  export type Query = Record<string, unknown>;

  /** The verified token as ltijs cuts it down. */
  export interface LaunchToken {
    iss: string;
    user: string;
    clientId: string;
    deploymentId: string;
  }

  export interface Platform {
    platformPrivateKey(): Promise<string>;
    platformKid(): Promise<string>;
    platformAuthorizationServer(): Promise<string>;
  }

  export interface Provider {
    app: RequestHandler;
    setup(secret: string, database: { plugin: DatabasePlugin }, options: object): Provider;
    deploy(options: { serverless: true; silent: true }): Promise<true>;
    onConnect(
      callback: (token: LaunchToken, req: Request, res: Response, next: NextFunction) => unknown,
    ): true;
    onInvalidToken(callback: (req: Request, res: Response) => unknown): true;
    onSessionTimeout(callback: (req: Request, res: Response) => unknown): true;
    registerPlatform(platform: {
      url: string;
      name: string;
      clientId: string;
      authenticationEndpoint: string;
      accesstokenEndpoint: string;
      authorizationServer?: string | undefined;
      authConfig: { method: 'JWK_SET'; key: string };
    }): Promise<Platform>;
    getPlatform(issuer: string, clientId: string): Promise<Platform | false>;
  }

  const ltijs: { Provider: Provider & { constructor: new () => Provider } };
  export default ltijs;
}
