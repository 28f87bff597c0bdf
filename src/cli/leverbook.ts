import { Command, CommanderError, Option } from 'commander';
import { Exit, Refusal } from './exit.ts';

declare const LEVERBOOK_VERSION: string;

// Each command's code is loaded when it is called, so that help and mistakes answer at once.
const program = new Command('leverbook')
  .description('The workbook for people who coach, study or train the squat, without its page.')
  .version(LEVERBOOK_VERSION)
  .showSuggestionAfterError()
  .showHelpAfterError('(--help shows what is accepted)')
  .exitOverride()
  .addHelpText(
    'after',
    '\nExit codes: 0 done; 1 a fault of the program; 2 input that cannot be used; 130 stopped by you.',
  );

const aboutPdf =
  '\nPDF: LEVERBOOK_CHROMIUM names the Chromium that prints, else one on PATH does; without one, or with\nLEVERBOOK_CHROMIUM=off, there is only HTML.';
/** An option that may come again; left out, there is no list. */
const collect = (value: string, before: readonly string[] = []): string[] => [...before, value];

program
  .command('eval')
  .description('Evaluate formulas made of literals, inline arrays and functions, and print a result a line.')
  .argument(
    '[formula...]',
    'formulas, with or without a leading "="; without any, they are read from standard input',
  )
  .option('--json', 'one JSON line each: {"formula","value"} or {"formula","error","message"}')
  .option('--file <file>', 'read the formulas from a file, one a line')
  .action(async (formulas, options) => (await import('./eval.ts')).evalCommand(formulas, options));

program
  .command('calc')
  .description(
    'Open a book, bring files in, recalculate, and write its sheets as CSV or JSON lines, or all as XLSX.',
  )
  .argument('<book>', 'a .leverbook.json file; it is never changed')
  .option(
    '--import <sheet=file>',
    'bring a CSV, XLSX or ODS file into a sheet, by its recipe or matching headings (repeatable)',
    collect,
  )
  .addOption(
    new Option(
      '--differing <what>',
      'rows of a file that the sheet has with other values: leave the sheet’s, take the file’s, or add them as further rows',
    ).choices(['leave', 'take', 'add']),
  )
  .option('--sheet <name>', 'write only this sheet as CSV or JSON (repeatable)', collect)
  .addOption(
    new Option('--out <folder>', 'write SHEET.csv for each sheet into this folder').conflicts('json'),
  )
  .option('--json', 'print a JSON line for each row instead')
  .option('--xlsx <file>', 'write the book as an XLSX file, which programs for OpenDocument open too')
  .option('--save <newbook>', 'save the book with what came in as a new file')
  .option('--replace', 'let --save and --xlsx replace a file that exists')
  .action(async (book, options) => (await import('./calc.ts')).calcCommand(book, options));

program
  .command('check')
  .description(
    'Say what the intake sees in a CSV, XLSX or ODS file: encoding, headings, kinds, units, doubts.',
  )
  .argument('<file>', 'a CSV, XLSX or ODS file')
  .option('--json', 'the findings as JSON')
  .action(async (file, options) => (await import('./check.ts')).checkCommand(file, options));

program
  .command('handout')
  .description('Write a page for each athlete of a book: HTML, and PDF where a Chromium is found.')
  .argument('<book>', 'a .leverbook.json file; it is never changed')
  .requiredOption('--out <folder>', 'write the pages into this folder')
  .option('--sheet <name>', 'the sheet with one row an athlete')
  .option('--athlete <name>', 'only this athlete (repeatable)', collect)
  .addOption(new Option('--paper <size>', 'paper size').choices(['a4', 'letter']).default('a4'))
  .addHelpText('after', aboutPdf)
  .action(async (book, options) => (await import('./handout.ts')).handoutCommand(book, options));

program
  .command('report')
  .description('Write the cohort report of a book: methods, reliability, groups, results, figures, sources.')
  .argument('<book>', 'a .leverbook.json file; it is never changed')
  .requiredOption(
    '--out <folder>',
    'write report.html, and report.pdf where a Chromium is found, into this folder',
  )
  .addOption(new Option('--paper <size>', 'paper size').choices(['a4', 'letter']).default('a4'))
  .addHelpText('after', aboutPdf)
  .action(async (book, options) =>
    (await import('./report.ts')).reportCommand(book, options, LEVERBOOK_VERSION),
  );

program
  .command('functions')
  .description('Show the function reference: all, or one whole.')
  .argument('[name]', 'a function, such as LEAN.PARALLEL')
  .option('--json', 'as JSON')
  .action(async (name, options) => (await import('./functions.ts')).functionsCommand(name, options));

for (const command of program.commands)
  command.exitOverride().showSuggestionAfterError().showHelpAfterError(false);
program.configureOutput({ outputError: (text, write) => write(text) });

async function main(): Promise<number> {
  try {
    await program.parseAsync();
    return process.exitCode === undefined ? Exit.done : Number(process.exitCode);
  } catch (error) {
    if (error instanceof CommanderError) return wrongCall(error);
    if (error instanceof Refusal) {
      process.stderr.write(`leverbook: ${error.message}\n`);
      return Exit.refused;
    }
    process.stderr.write(
      `leverbook: a fault of the program: ${error instanceof Error ? (error.stack ?? error.message) : error}\n`,
    );
    return Exit.fault;
  }
}

/** commander has printed what is wrong; a wrong option is followed by the right ones. */
function wrongCall(error: CommanderError): number {
  if (error.exitCode === 0) return Exit.done;
  if (error.code === 'commander.unknownOption') {
    const command = program.commands.find((c) => process.argv[2] === c.name()) ?? program;
    const options = command.options.map((o) => o.flags).join(', ');
    process.stderr.write(`Options of ${command.name()}: ${options || 'none'}, -h, --help\n`);
  }
  return Exit.refused;
}

process.exitCode = await main();
