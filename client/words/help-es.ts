import { ordinal } from './es.ts';
import type { helpEn } from './help-en.ts';
import { many } from './many.ts';
import type { Values } from './values.ts';

/** What help says, in Spanish. */
export const helpEs: Record<keyof typeof helpEn, string | ((values: Values) => string)> = {
  howTile: 'Pon la ficha {digit} en las {place}.',
  howLift: 'Quita {bars} de la casilla marcada.',
  howLiftTile: 'Quita la ficha de las {place}.',
  howLay: 'Pon {bars} en la casilla marcada.',
  howCount: 'Cuenta el montón marcado, barra por barra.',
  howTen: 'Elige en la casilla marcada barras que formen diez.',
  howExchange: ({ tens }) =>
    `Toma ${tens} ${many(tens, 'diez', 'dieces')} de la casilla marcada y pon ${tens} ${many(tens, 'perla', 'perlas')} a la izquierda.`,
  howSlide: 'Desliza el montón marcado a la otra casilla marcada.',
  howSay: 'Lee la fila de izquierda a derecha, con sus ceros.',
  howWrite: 'Lee el montón de las {place} y escribe su cifra.',
  whereHere: 'Mira el lugar marcado.',
  howPoint: '{across} por {up} son {place}: la última cifra del producto son {place}.',
  howUndo: 'Deshaz lo último.',
  howBegin: ({ row }) => `Toca la cifra del multiplicador de la ${ordinal(row)} fila.`,
  howDigit: 'Escribe {digit} en las {place}.',
  howCarry: 'Escribe un {digit} pequeño encima de las {place}.',
  howFigureUnits: 'Escribe las unidades, {digit}, en la esquina de abajo de la casilla marcada.',
  howFigureTens: 'Escribe las decenas, {digit}, en la esquina de arriba de la casilla marcada.',
  howRub: 'Borra la cifra del lugar marcado.',
  howSquare: '{column} por {row} son {place}: la casilla marcada.',
  howWorth: '{column} por {row} son {worth}.',
  howTell: 'Lee las fichas de izquierda a derecha.',
  howDone: 'Está todo puesto. Di que has terminado.',
  askTiles: '¿Qué cifras faltan todavía? Las unidades van en la esquina.',
  askLay: '¿Qué casilla necesita barras todavía? Las dos fichas dicen qué barra y cuántas.',
  askCount: '¿Qué montón tiene diez o más?',
  askRow: '¿Qué hay en esta fila? Léela desde la izquierda.',
  askSlide: '¿Qué montones no están aún en la fila de abajo? Sigue su color hacia abajo.',
  askFact: '¿Cuánto es el producto? Sus unidades van aquí, sus decenas una casilla a la izquierda.',
  askFigures:
    '¿Cuánto es el producto? Sus unidades se quedan aquí, sus decenas van una casilla a la izquierda.',
  askWrite: '¿Qué sigue desde la derecha? ¿Te llevabas algo?',
  askAdd: '¿Cuánto suman las cifras que están una sobre otra? ¿Te llevabas algo?',
  askWalk: 'Sube por la columna y cruza por la fila: ¿cuánto forman juntas?',
  askTell: '¿Qué ficha tiene el lugar más alto?',
  askRead: '¿Qué cifra falta por escribir?',
};
