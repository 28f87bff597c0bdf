/** Where the command line begins: its commands and options. */
import { Command, CommanderError, Option } from 'commander';
import { Exit, faultOf, Refusal } from './exit.ts';
import { differingOption, onConflictOption } from './on-conflict.ts';
import { say } from './print.ts';
import { type Task, task } from './thread.ts';
import { visible } from './visible.ts';

declare const LEVERBOOK_VERSION: string;

// Each command's code is loaded when it is called, so that help and mistakes answer at once; what computes is loaded in
// a thread that can be ended.
const commands: Readonly<Record<string, (...args: never[]) => unknown>> = {
  eval: async (...args: Parameters<typeof import('./eval.ts').evalCommand>) =>
    (await import('./eval.ts')).evalCommand(...args),
  calc: async (...args: Parameters<typeof import('./calc.ts').calcCommand>) =>
    (await import('./calc.ts')).calcCommand(...args),
  check: async (...args: Parameters<typeof import('./check.ts').checkCommand>) =>
    (await import('./check.ts')).checkCommand(...args),
  handout: async (...args: Parameters<typeof import('./handout.ts').handoutCommand>) =>
    (await import('./handout.ts')).handoutCommand(...args),
  report: async (...args: Parameters<typeof import('./report.ts').reportCommand>) =>
    (await import('./report.ts')).reportCommand(...args),
};

const program = new Command('leverbook')
  .description('The workbook for people who coach, study or train the squat, on the command line.')
  .version(LEVERBOOK_VERSION)
  .showSuggestionAfterError()
  .showHelpAfterError('(--help shows what is accepted)')
  .exitOverride()
  .addHelpText(
    'after',
    '\nExit codes: 0 done; 1 a fault of the program; 2 input that cannot be used; 124 out of time; 130 interrupted.',
  );

const aboutPdf =
  '\nPDF: printed by the Chromium that LEVERBOOK_CHROMIUM names, else by one on PATH. Without one, or with\nLEVERBOOK_CHROMIUM=off, only HTML is written.';
/** Longest that a timer can be set for, s. */
const longest = 2_147_483;
const timeout = (of: string): Option =>
  new Option(
    '--timeout <seconds>',
    `stop after this many seconds${of}, and name the formula; 0: no limit`,
  ).argParser((text) => {
    const seconds = Number(text);
    if (text.trim() !== '' && seconds >= 0 && seconds <= longest) return seconds;
    throw new Refusal(`--timeout got "${text}"; it takes seconds, such as 60, or 0 for no limit.`);
  });
/** An option that may come again; left out, there is no list. */
const collect = (value: string, before: readonly string[] = []): string[] => [...before, value];

program
  .command('eval')
  .description(
    'Evaluate formulas made of literals, inline arrays and functions, and print one result per line.',
  )
  .argument(
    '[formula...]',
    'formulas, with or without a leading "="; without any, they are read from standard input',
  )
  .option('--json', 'one JSON line per formula: {"formula","value"} or {"formula","error","message"}')
  .option('--file <file>', 'read the formulas from a file, one per line')
  .addOption(timeout(' in total').default(60))
  .action(async (formulas, options) => {
    const { formulasGiven } = await import('./eval.ts');
    await inThread('eval', [await formulasGiven(formulas, options), options], options.timeout);
  });

program
  .command('calc')
  .description(
    'Open a book, import files, recalculate, and write its sheets as CSV or JSON lines, or all as XLSX.',
  )
  .argument('<book>', 'a .leverbook.json file; it is changed only where --save names it, with --replace')
  .option(
    '--import <sheet=file>',
    'import a CSV, XLSX or ODS file into a sheet, by its import settings or matching headings (repeatable)',
    collect,
  )
  .addOption(onConflictOption())
  .addOption(differingOption())
  .option('--sheet <name>', 'write only this sheet as CSV or JSON (repeatable)', collect)
  .addOption(
    new Option('--out <folder>', 'write SHEET.csv for each sheet into this folder').conflicts('json'),
  )
  .option('--json', 'print one JSON line per row instead')
  .option('--xlsx <file>', 'write the book as an XLSX file, which programs for OpenDocument open too')
  .option('--save <newbook>', 'save the book with the imported rows as a new file')
  .option('--replace', 'replace files that exist')
  .addOption(timeout(', reading and writing included'))
  .action((book, options) => inThread('calc', [book, options], options.timeout));

program
  .command('check')
  .description(
    'Report how a CSV, XLSX or ODS file would be read: encoding, headings, kinds, units, what to check. Of a book file, list its checks by cause.',
  )
  .argument('<file>', 'a CSV, XLSX or ODS file')
  .option('--json', 'the findings as JSON')
  .action((file, options) => inThread('check', [file, options]));

program
  .command('handout')
  .description('Write one page per athlete of a book: HTML, and PDF where a Chromium is found.')
  .argument('<book>', 'a .leverbook.json file; it is never changed')
  .requiredOption('--out <folder>', 'write the pages into this folder')
  .option('--sheet <name>', 'the sheet with one row per athlete')
  .option('--athlete <name>', 'only this athlete (repeatable)', collect)
  .addOption(new Option('--paper <size>', 'paper size').choices(['a4', 'letter']).default('a4'))
  .option('--replace', 'replace files that exist')
  .addHelpText('after', aboutPdf)
  .action((book, options) => inThread('handout', [book, options]));

program
  .command('report')
  .description('Write the cohort report of a book: methods, reliability, groups, results, figures, sources.')
  .argument('<book>', 'a .leverbook.json file; it is never changed')
  .requiredOption(
    '--out <folder>',
    'write report.html, and report.pdf where a Chromium is found, into this folder',
  )
  .addOption(new Option('--paper <size>', 'paper size').choices(['a4', 'letter']).default('a4'))
  .option('--replace', 'replace files that exist')
  .addHelpText('after', aboutPdf)
  .action((book, options) => inThread('report', [book, options, LEVERBOOK_VERSION]));

program
  .command('functions')
  .description('Show the function reference: a list of all functions, or one function in full.')
  .argument('[name]', 'a function, such as LEAN.PARALLEL')
  .option('--json', 'as JSON')
  .action(async (name, options) => (await import('./functions.ts')).functionsCommand(name, options));

for (const command of program.commands)
  command.exitOverride().showSuggestionAfterError().showHelpAfterError(false);
for (const command of [program, ...program.commands])
  command.configureOutput({ outputError: (text, write) => write(visible(text)) });

async function main(): Promise<number> {
  try {
    await program.parseAsync();
    return process.exitCode === undefined ? Exit.done : Number(process.exitCode);
  } catch (error) {
    if (error instanceof CommanderError) return wrongCall(error);
    if (error instanceof Refusal) {
      say(`leverbook: ${error.message}`);
      return Exit.refused;
    }
    say(faultOf(error));
    return Exit.fault;
  }
}

/** Runs a command in a thread of its own. */
async function inThread(command: string, args: readonly unknown[], seconds?: number): Promise<void> {
  const { watched } = await import('./watched.ts');
  process.exitCode = await watched({
    entry: new URL(import.meta.url),
    command,
    args,
    ...(seconds ? { seconds } : {}),
  });
}

/** The thread's side of it. */
async function perform({ command, args }: Task): Promise<number> {
  try {
    await commands[command]!(...(args as never[]));
    return Exit.done;
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    say(`leverbook: ${error.message}`);
    return Exit.refused;
  }
}

/** commander has printed what is wrong; a wrong option is followed by the right ones. */
function wrongCall(error: CommanderError): number {
  if (error.exitCode === 0) return Exit.done;
  if (error.code === 'commander.unknownOption') {
    const command = program.commands.find((c) => process.argv[2] === c.name()) ?? program;
    const options = command.options.map((o) => o.flags).join(', ');
    say(`Options of ${command.name()}: ${options || 'none'}, -h, --help`);
  }
  return Exit.refused;
}

process.exitCode = await (task ? perform(task) : main());
