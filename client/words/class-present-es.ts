import type { presentEn } from './class-present-en.ts';
import { many } from './many.ts';
import type { Values } from './values.ts';
import type { Phrase } from './words.ts';

const bars = ({ count, kind }: Values) => `${count} ${many(count, 'barra', 'barras')} de ${kind}`;
const withCarry = ({ carry }: Values) => (carry === 0 ? '' : `, más ${carry} que se lleva`);

/** Every word of a presentation in Spanish. Teachers are addressed as “usted”. */
export const presentEs: Record<keyof typeof presentEn, Phrase> = {
  presentTitle: 'Presentar',
  presentIntro:
    'Un problema resuelto, paso a paso, para la clase. Las flechas, Av Pág y Re Pág, la barra espaciadora o un mando avanzan y retroceden.',
  ofActivity: 'Problemas de «{title}»',
  ownProblem: 'Un problema propio',
  stage: 'Etapa',
  numbers: 'Números',
  numbersLike: '934 × 314',
  start: 'Empezar',
  notClear: 'Escriba dos números con × entre ellos.',
  notPlayable: 'Esta etapa no admite esos números, o no caben en ningún tapete.',
  noNetwork: 'El servidor no contesta. Inténtelo otra vez dentro de un momento.',
  stageWalk: 'Recorrer los cuadros',
  stageBuild: 'Formar los números',
  stageBars1: 'Barras, una fila',
  stageBars: 'Barras, varias filas',
  stageFacts: 'Productos sabidos',
  stageRecord: 'Anotar los productos parciales',
  stageCells: 'Cifras en los cuadros',
  stagePaper: 'Papel cuadriculado',
  stageOpen: 'Tapete libre, puesto a mano',
  questions: '{stage}, {count} preguntas',
  named: '{numbers}, {stage}',
  forward: 'Adelante',
  back: 'Atrás',
  toStart: 'Al principio',
  captions: 'Palabras',
  choose: 'Otro problema',
  close: 'Cerrar',
  oneLikeYours: 'No es tu trabajo, pero se parece.',
  backToOwn: 'Volver al mío',
  at: 'Paso {at} de {all}',
  noteTitle: 'Anotar como presentado',
  noteIntro:
    'La nota es un archivo en este aparato; no se envía a ninguna parte. Guárdela con sus registros.',
  noteTo: 'Presentado a',
  noteOn: 'El día',
  noteSave: 'Guardar la nota como archivo',
  noteSaved: 'Guardada como {file}.',
  noteMissing: 'Escriba a quién se presentó.',

  begin: '{numbers}',
  beginQuestions: 'Preguntas sobre el tapete',
  layTileBottom: 'Abajo, {place}: la ficha {digit}.',
  layTileRight: 'Al lado, {place}: la ficha {digit}.',
  liftTile: 'Se quita la ficha.',
  layBars: (values) => `${values.count} por ${values.kind}: ${bars(values)}, en ${values.place}.`,
  layFact: (values) => `${bars(values)} en ${values.place}.`,
  liftBars: (values) => `Se quitan ${bars(values)}.`,
  count: 'Contado, en {place}: {total}.',
  makeTen: 'Estas hacen diez.',
  exchange: ({ tens, next }) =>
    `${tens} ${many(tens, 'diez se cambia', 'dieces se cambian')}: ${tens} en ${next}.`,
  slide: 'Baja por la diagonal: todo es {place}.',
  sayRow: 'La {row} hace {answer}.',
  askSquare: '¿Qué cuadro vale {worth}?',
  askCategory: '{across} por {up}: ¿qué cuadro?',
  sayPrompt: '{answer}.',
  sayPlace: 'Este.',
  sayNumber: '{answer}.',
  beginRow: 'La cifra {digit}, en {place}, hace la {row}.',
  writePartial: (values) =>
    `${values.up} por ${values.across}${withCarry(values)}, hace ${values.total}: se escribe ${values.digit}.`,
  writePartialLast: 'Lo que se llevaba: se escribe {digit}.',
  writePartialRead: 'En {place} de la {row}: {digit}.',
  writeZero: 'Nada en {place} de esta fila: un cero.',
  writeCarry: 'Se lleva {digit} a {place}.',
  writeProduct: 'El producto, {place}: {digit}.',
  writeSum: (values) =>
    `En ${values.place} hay ${values.total}${withCarry(values).replace(', más', ', con')}: se escribe ${values.digit}.`,
  writeSquareOwn: '{up} por {across} son {total}: sus unidades, {digit}, quedan aquí.',
  writeSquareLeft:
    '{up} por {across} son {total}: sus decenas, {digit}, van un cuadro a la izquierda.',
  rub: 'Se borra.',
  point: ({ places }) =>
    `La coma: ${places} ${many(places, 'cifra', 'cifras')} detrás, tantas como en los dos números.`,
  finishRow: 'La {row} está lista.',
  finishProduct: 'El producto se puede leer.',
  finishProblem: 'Eso es todo: {numbers} está resuelto.',
  finishQuestions: 'Eso es todo.',
  undo: 'Se deshace.',
};
