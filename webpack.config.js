import { readFileSync } from 'node:fs';
import { chmod } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import CopyPlugin from 'copy-webpack-plugin';
import MiniCssExtractPlugin from 'mini-css-extract-plugin';
import MinimizerPlugin from 'minimizer-webpack-plugin';
import webpack from 'webpack';
import { buildGridLibrary } from './taskpane/workbench/buildGridLibrary.mjs';

const at = (path) => fileURLToPath(new URL(path, import.meta.url));
const { version } = JSON.parse(readFileSync(at('./package.json'), 'utf8'));

/** What every bundle shares. Types are checked by `npm run types`, so that the build stays quick. */
function bundle(name, mode) {
  return {
    name,
    mode,
    devtool: mode === 'production' ? false : 'source-map',
    // What `npm ci` has built for the command is not compiled again by `npm run build`.
    cache: {
      type: 'filesystem',
      buildDependencies: { config: [at('./webpack.config.js'), at('./package-lock.json')] },
    },
    resolve: { extensions: ['.tsx', '.ts', '.js'] },
    module: {
      rules: [
        { test: /\.tsx?$/, loader: 'ts-loader', options: { transpileOnly: true } },
        { test: /\.css$/, use: [MiniCssExtractPlugin.loader, 'css-loader'] },
        { test: /\.(csv|svg)$/, type: 'asset/source' },
      ],
    },
    plugins: [new webpack.DefinePlugin({ ARCHWRIGHT_VERSION: JSON.stringify(version) })],
    // As small as with the usual minimizer, in half the time.
    optimization: { minimizer: [new MinimizerPlugin({ minify: MinimizerPlugin.swcMinify })] },
    performance: { hints: false }, // sizes are checked by tests/build/size.test.ts
    stats: 'errors-warnings',
  };
}

/** The `archwright` command: one file that needs no package beside it. */
function commandLine(mode) {
  const base = bundle('cli', mode);
  return {
    ...base,
    target: 'node20',
    entry: { archwright: './cli/archwright.ts', 'read-pdf': './cli/pdf/worker.ts' },
    node: { __dirname: false },
    output: { path: at('./dist/cli'), filename: '[name].cjs', chunkFilename: '[name].cjs', clean: true },
    optimization: { minimize: false }, // a stack trace from a user should name our functions
    plugins: [
      ...base.plugins,
      new webpack.BannerPlugin({ banner: '#!/usr/bin/env node', raw: true, include: 'archwright' }),
      runnable(at('./dist/cli/archwright.cjs')),
      new CopyPlugin({ patterns: pdfLibrary }),
    ],
  };
}

/** The PDF library and its worker, shipped unmodified: they are loaded only when a PDF is read. */
const pdfLibrary = ['pdf.min.mjs', 'pdf.worker.min.mjs'].map((from) => ({
  context: at('./node_modules/pdfjs-dist/legacy/build/'),
  from,
  to: '[name][ext]',
  info: { minimized: true },
}));

/** npx marks a command as runnable only when it first meets it, and each build writes the file anew. */
function runnable(file) {
  return { apply: ({ hooks }) => hooks.afterEmit.tapPromise('runnable', () => chmod(file, 0o755)) };
}

/** Served from localhost, a function's help leads to the pages of help beside it; `npm run package` puts its own address there. */
const helpBeside = (functions) =>
  functions.toString().replaceAll('https://archwright.example', 'https://localhost:3000');

/** What of dist/web the workbench's build makes; the add-in's makes the rest. Each clears away what it no longer makes. */
const OF_THE_WORKBENCH = /^(workbench|grid-library|examples)/;

/** The Excel add-in. Classic scripts, because Excel's own runtimes load them as such. */
function addIn(mode) {
  const base = bundle('add-in', mode);
  const office = at('./node_modules/@microsoft/office-js/dist/');
  const unmodified = { info: { minimized: true } };
  return {
    ...base,
    target: ['web', 'es2020'],
    entry: { functions: './functions/register.ts', taskpane: './taskpane/excel/taskpane.ts' },
    output: {
      path: at('./dist/web'),
      filename: '[name].js',
      chunkFilename: 'taskpane-[name].js',
      publicPath: 'auto',
      clean: { keep: OF_THE_WORKBENCH },
    },
    plugins: [
      ...base.plugins,
      new MiniCssExtractPlugin({ filename: '[name].css' }),
      new CopyPlugin({
        patterns: [
          { from: 'taskpane/excel/{taskpane,support}.html', to: '[name][ext]' },
          { from: 'taskpane/excel/icons/*.png', to: 'icons/[name][ext]' },
          { from: 'functions/functions.json', to: '[name][ext]', transform: helpBeside },
          ...pdfLibrary,
          // Only what Excel asks for of the 87 MB that the package holds.
          { context: office, from: '{office,o15apptofilemappingtable}.js', to: 'office/', ...unmodified },
          {
            context: office,
            from: 'excel-*.js',
            to: 'office/',
            globOptions: { ignore: ['**/*.debug.js'] },
            ...unmodified,
          },
          { context: office, from: 'custom-functions-runtime.js', to: 'office/', ...unmodified },
          { context: office, from: '*/office_strings.js', to: 'office/', ...unmodified },
        ],
      }),
    ],
  };
}

/** The workbench page. The grid's packages are built apart and found as a global. */
function workbench(mode) {
  const base = bundle('workbench', mode);
  return {
    ...base,
    target: ['web', 'es2022'],
    entry: { workbench: './taskpane/workbench/workbench.ts' },
    output: {
      path: at('./dist/web'),
      filename: '[name].js',
      chunkFilename: 'workbench-[name].js',
      publicPath: 'auto',
      clean: { keep: (path) => !OF_THE_WORKBENCH.test(path) || path.startsWith('grid-library') },
    },
    plugins: [
      ...base.plugins,
      new MiniCssExtractPlugin({ filename: '[name].css' }),
      new CopyPlugin({
        patterns: [
          { from: 'taskpane/workbench/workbench.html', to: '[name][ext]' },
          { from: 'taskpane/excel/icons/*.png', to: 'icons/[name][ext]' },
          { from: 'examples/*.{csv,xlsx}', to: 'examples/[name][ext]', noErrorOnMissing: true },
        ],
      }),
      {
        apply(compiler) {
          compiler.hooks.beforeRun.tapPromise('grid library', () =>
            buildGridLibrary(at('./dist/web/grid-library'), mode === 'production'),
          );
        },
      },
    ],
  };
}

export default (_env, { mode = 'production' }) => [commandLine(mode), addIn(mode), workbench(mode)];
