import { buildSync } from 'esbuild';

/** A page's script as the build makes it: one module, small. */
export function pageScript(
  entry: 'adapters/web/page/chat.ts' | 'adapters/yard/page/yard.ts' | 'adapters/yard/page/graph-picture.ts',
): string {
  const built = buildSync({
    entryPoints: [entry],
    bundle: true,
    minify: true,
    format: 'esm',
    target: ['es2022'],
    write: false,
  });
  return built.outputFiles[0]?.text ?? '';
}
