import { exportJWK, generateKeyPair, importJWK, type JWK, type JWTPayload, SignJWT } from 'jose';

/** A new RS256 key pair as a private JWK with its `kid`. */
export const newSigningKey = async (): Promise<JWK> => {
  const { privateKey } = await generateKeyPair('RS256', { extractable: true });
  const key = await exportJWK(privateKey);
  return { ...key, alg: 'RS256', use: 'sig', kid: crypto.randomUUID() };
};

/** The key set that tools fetch: public parts only, the members seen at a real platform. */
export const publicKeySet = ({ kty, alg, kid, e, n, use }: JWK) => ({
  keys: [{ kty, alg, kid, e, n, use }],
});

export const sign = async (key: JWK, claims: JWTPayload): Promise<string> =>
  new SignJWT(claims)
    .setProtectedHeader({ typ: 'JWT', alg: 'RS256', kid: key.kid ?? '' })
    .sign(await importJWK(key, 'RS256'));
