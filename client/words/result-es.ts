import type { resultEn } from './result-en.ts';

/** The child's own result, in Spanish. */
export const resultEs: Record<keyof typeof resultEn, string> = {
  resultTitle: 'Tu trabajo',
  resultAtOnce: 'bien a la primera',
  resultMended: 'corregido',
  resultHinted: 'con ayuda',
  resultFollows: 'bien después de un descuido',
  resultNotRight: 'para mirar otra vez',
  resultOpen: 'sin hacer',
  resultScore: '{awarded} de {available}',
  resultSent: 'Tu docente tiene tu trabajo.',
  resultWaiting: 'En camino a tu docente.',
  resultUnsent:
    'Tu trabajo está todavía en este aparato. Deja la página abierta hasta que se guarde.',
  resultByTeacher: 'Tu docente te enseñará el resultado.',
  workAgain: 'Otra vuelta, para ti',
  thisRound: 'En la vuelta para ti:',
  goBack: 'Volver a mi trabajo',
};
