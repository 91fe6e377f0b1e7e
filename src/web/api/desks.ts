/** The desks for programs: reckoning without a car. The fields are those of the desks' forms. */
import { createRoute, type z } from '@hono/zod-openapi';
import type { Outcome } from '../../acts/fault.ts';
import type { Asked } from '../desks/asked.ts';
import { DETAILS as BATTERY, readBattery } from '../desks/battery.tsx';
import { DETAILS as BRAKE_FLUID, readBrakeFluid } from '../desks/brake-fluid.tsx';
import { DETAILS as COOLANT, readCoolant } from '../desks/coolant.tsx';
import { DETAILS as FUEL, readFuel } from '../desks/fuel.tsx';
import { RUBBER_QUESTIONS as RUBBER, readRubber } from '../desks/rubber.tsx';
import type { Ctx } from '../visit.ts';
import { batteryOut, brakeFluidOut, coolantOut, fuelOut, rubberOut } from './desk-documents.ts';
import { faultsProblem } from './problem.ts';
import { type Api, json, refusal } from './route.ts';
import { Day, text } from './schemas/base.ts';
import { BatteryOut, BrakeFluidOut, CoolantOut, FuelOut, queryOf, RubberOut } from './schemas/desks.ts';

const deskRoute = <Answer extends z.ZodType>(
  name: string,
  summary: string,
  query: ReturnType<typeof queryOf>,
  answer: Answer,
) =>
  createRoute({
    method: 'get',
    path: `/desks/${name}`,
    summary,
    request: { query },
    responses: { 200: json(answer, 'The answer with its ranges'), 422: refusal('What was wrong') },
  });

const typedDate = (what: string) =>
  text.optional().openapi({ description: `${what}, as people write dates`, example: 'June 2024' });

const brakeFluid = deskRoute(
  'brake-fluid',
  'Water and boiling point of brake fluid by grade, age and measurement',
  queryOf(BRAKE_FLUID, { filled: typedDate('When it was filled') }),
  BrakeFluidOut,
);
const coolant = deskRoute('coolant', 'Where a coolant freezes, and how to strengthen it', queryOf(COOLANT), CoolantOut);
const battery = deskRoute(
  'battery',
  'When a parked battery wants charging, stops cranking, or could freeze',
  queryOf(BATTERY, {
    from: Day.optional().describe('First day; the day of the request by default'),
    until: Day.optional().describe('Last day; six months later by default'),
  }),
  BatteryOut,
);
const fuel = deskRoute(
  'fuel',
  'How long fuel stays good, and when water parts it',
  queryOf(FUEL, { bought: typedDate('When it was bought') }),
  FuelOut,
);

const rubber = deskRoute(
  'rubber',
  'How long a part of rubber that was never fitted may lie',
  queryOf(RUBBER, { made: typedDate('When it was made') }),
  RubberOut,
);

export const deskRoutes = (app: Api): void => {
  app.openapi(brakeFluid, (c) => {
    const { on, person } = c.get('visit');
    return reckoned(c, readBrakeFluid(askedIn(c), on, person.dateOrder), brakeFluidOut);
  });
  app.openapi(coolant, (c) => reckoned(c, readCoolant(askedIn(c)), coolantOut));
  app.openapi(battery, (c) => reckoned(c, readBattery(askedIn(c), c.get('visit').on), batteryOut));
  app.openapi(fuel, (c) => {
    const { on, person } = c.get('visit');
    return reckoned(c, readFuel(askedIn(c), on, person.dateOrder), fuelOut);
  });
  app.openapi(rubber, (c) => {
    const { on, person } = c.get('visit');
    return reckoned(c, readRubber(askedIn(c), on, person.dateOrder), (answer) => rubberOut(answer, on));
  });
};

/** The query as the desk takes it; its shape is checked by then. */
const askedIn = (c: Ctx): Asked => c.req.query();

const reckoned = <Read, Answer extends object>(c: Ctx, read: Outcome<Read>, out: (answer: Read) => Answer): never =>
  (read.ok ? c.json(out(read.value), 200) : faultsProblem(c, read.faults, 'This can’t be reckoned with')) as never;
