import type { classEn } from './class-en.ts';
import { many } from './many.ts';
import type { Values } from './values.ts';

/** Every word of the teacher's pages in Spanish. Teachers are addressed as “usted”. */
export const classEs: Record<keyof typeof classEn, string | ((values: Values) => string)> = {
  childLabel: 'Niño o niña {number}',
  classEmpty: 'Nadie ha abierto esto todavía.',
  classCaution:
    'Son cifras de esta única actividad. Léalas junto con lo que usted ve; las decisiones sobre un niño o una niña son suyas y de profesionales cualificados.',
  classTry: 'Probar el trabajo como alumno',
  classPresent: 'Presentar',
  classPrint: 'Imprimir',
  classReload: 'Mirar otra vez',
  classChild: 'Niño o niña',
  classState: 'Trabajo',
  classProblems: 'Problemas',
  classScore: 'Puntos',
  classDelivery: 'Libro de calificaciones',
  classOf: '{done} de {all}',
  classNames: 'No se guardan nombres: la numeración sigue el orden en que empezaron.',
  stateNotStarted: 'sin empezar',
  stateWorking: 'trabajando',
  stateFinished: 'terminado, aún no publicado',
  stateReleased: 'terminado',
  classRelease: 'Mostrar los resultados y enviar las calificaciones',
  classReleased: ({ released }) =>
    `${released} ${many(released, 'resultado mostrado', 'resultados mostrados')}.`,
  deliveryNone: 'nada que enviar',
  deliveryWaiting: 'en camino',
  deliverySending: 'en camino',
  deliverySent: 'en el libro de calificaciones',
  deliveryHeld: 'retenido',
  deliveryStuck: 'no enviado',
  reasonWith: '{state}: {reason}',
  'reason.trial': 'una prueba no se califica',
  'reason.noLineItem': 'este lugar del curso no tiene columna en el libro de calificaciones',
  'reason.noScope':
    'la plataforma no deja que Placeweave envíe calificaciones; pida a quien la administra que active el servicio de calificaciones',
  'reason.notFinished': 'el trabajo no está terminado',
  'reason.notReleased': 'todavía no lo ha publicado',
  'reason.changedOnPlatform':
    'la calificación se cambió en el libro de calificaciones; no se sobrescribe',
  'reason.removedOnPlatform':
    'la calificación se quitó del libro de calificaciones; no se escribe de nuevo',
  'reason.platformHasNewer': 'el libro de calificaciones tiene una calificación posterior',
  'reason.lineItemGone': 'la columna ya no está en el libro de calificaciones',
  'reason.notGradable':
    'la plataforma no acepta calificaciones para esta persona, que quizá no sea estudiante del curso',
  'reason.forbidden': 'la plataforma no deja que Placeweave envíe calificaciones en este curso',
  'reason.scopeMissing':
    'la plataforma no deja que Placeweave envíe calificaciones; consulte a quien la administra',
  'reason.away': 'la plataforma no contesta por ahora; se intentará otra vez',
  'reason.other': 'la plataforma no la aceptó; consulte a quien la administra (código {code})',
  triedAt: 'último intento {when}',
};
