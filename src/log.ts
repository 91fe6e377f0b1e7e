/** One JSON line an event on standard output: time, level, event, and what belongs to it. Never secrets or addresses. */
export const LEVELS = ['debug', 'info', 'warn', 'error'] as const;
export type Level = (typeof LEVELS)[number];

export interface Log {
  debug(event: string, about?: object): void;
  info(event: string, about?: object): void;
  warn(event: string, about?: object): void;
  error(event: string, about?: object): void;
}

export const createLog = (least: Level, write: (line: string) => void = (line) => process.stdout.write(line)): Log => {
  const at =
    (level: Level) =>
    (event: string, about: object = {}) => {
      if (LEVELS.indexOf(level) < LEVELS.indexOf(least)) return;
      write(`${JSON.stringify({ time: new Date().toISOString(), level, event, ...about })}\n`);
    };
  return { debug: at('debug'), info: at('info'), warn: at('warn'), error: at('error') };
};

/** An error as log fields. */
export const fault = (error: unknown): { error: string; stack?: string } =>
  error instanceof Error
    ? { error: error.message, ...(error.stack ? { stack: error.stack } : {}) }
    : { error: String(error) };
