import { defineConfig } from 'drizzle-kit';

export default defineConfig({
  dialect: 'sqlite',
  schema: [
    './src/store/schema.ts',
    './src/store/letter-schema.ts',
    './src/store/stay-schema.ts',
    './src/store/revival-schema.ts',
  ],
  out: './migrations',
});
