import { words } from './family-words.ts';

/** Money paid, then earned. */
const cash = '{-100; 60; 60}';
const days = '{46000; 46180; 46365}';

export const finance = words(
  'Money over time',
  '6.12, financial functions',
  `
PMT(rate, periods, present, [future=0], [due=0]): The payment per period of a loan. | loan, instalment
IPMT(rate, period, periods, present, [future=0], [due=0]): The interest in one payment. | loan
PPMT(rate, period, periods, present, [future=0], [due=0]): The repayment in one payment. | loan
ISPMT(rate, period, periods, present): The interest in one payment of equal repayments. | loan
CUMIPMT(rate, periods, present, from_period, to_period, due): The interest paid over some periods. | loan
CUMPRINC(rate, periods, present, from_period, to_period, due): The repayment over some periods. | loan
FV(rate, periods, payment, [present=0], [due=0]): The value at the end. | savings
FVSCHEDULE(present, rates): The value at the end, with a rate for each period. | savings | FVSCHEDULE(100, {0.05; 0.04})
PV(rate, periods, payment, [future=0], [due=0]): The value now. | present value
NPV(rate, values*): The value now of payments at equal intervals. | present value | NPV(0.05, 60, 60)
XNPV(rate, cash, dates): The value now of payments on given dates. | present value | XNPV(0.05, ${cash}, ${days})
IRR(cash, [guess=0.1]): The rate at which payments come to nothing. | rate of return | IRR(${cash})
XIRR(cash, dates, [guess=0.1]): The rate at which payments on given dates come to nothing. | rate of return | XIRR(${cash}, ${days})
MIRR(cash, finance, reinvest): The rate of return with a rate for money borrowed and one for money invested. | rate of return | MIRR(${cash}, 0.05, 0.04)
RATE(periods, payment, present, [future=0], [due=0], [guess=0.1]): The rate per period of a loan. | loan
RRI(periods, present, high): The rate that turns one value into another. | growth rate | RRI(10, 100, 150)
NPER(rate, payment, present, [future=0], [due=0]): How many periods a loan takes. | loan | NPER(0.05, -100, 1000)
PDURATION(rate, present, high): How many periods turn one value into another. | growth | PDURATION(0.05, 100, 150)
EFFECT(nominal, per_year): The effective rate per year. | interest
NOMINAL(effective, per_year): The nominal rate per year. | interest
SLN(cost, salvage, life): Depreciation per period in a straight line. | depreciation
DB(cost, salvage, life, period, [first_year=12]): Depreciation by a fixed rate. | depreciation
DDB(cost, salvage, life, period, [factor=2]): Depreciation by a double rate. | depreciation
SYD(cost, salvage, life, period): Depreciation by the sum of years. | depreciation
DOLLARDE(price, fraction): A price in fractions as a decimal number. | price
DOLLARFR(price, fraction): A decimal price in fractions. | price
TBILLEQ(settlement, maturity, discount): The bond-equivalent yield of a treasury bill. | bill
TBILLPRICE(settlement, maturity, discount): The price of a treasury bill. | bill
TBILLYIELD(settlement, maturity, price): The yield of a treasury bill. | bill
`,
);
