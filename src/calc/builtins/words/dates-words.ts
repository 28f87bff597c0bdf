/** What built-in functions of dates are called and say. */
import { words } from './family-words.ts';

export const dates = words(
  'Dates and times',
  '6.9, date and time functions',
  `
TODAY(): The date of today. | current date, now
NOW(): The date and time now. | current time
DATE(year, month, day): A date from its parts. | make a date, year month day
DATEVALUE(text): The date that a text writes. | text to date, read a date | DATEVALUE("2026-09-14")
DAY(date): The day of the month. | day
MONTH(date): The month, 1 to 12. | month
YEAR(date): The year. | year
WEEKDAY(date, [type=1]): The day of the week as a number. | day of the week, Monday | WEEKDAY({d}, 2)
  Type 1 counts from Sunday as 1, type 2 from Monday as 1, type 3 from Monday as 0.
ISOWEEKNUM(date): The week of the year by ISO 8601. | week number, calendar week, training week
  Weeks start on Monday; week 1 is the one with the first Thursday of the year.
WEEKNUM(date, [type=1]): The week of the year, counted from 1 January. | week number
EDATE(date, months): The same day some months later. | add months, months later
EOMONTH(date, months): The last day of a month, some months later. | end of the month | EOMONTH({d}, 0)
DAYS(end_date, start_date): The days from one date to another. | days between, days since, difference of dates | DAYS(TODAY(), {d})
DAYS360(start_date, end_date, [european=FALSE]): The days between two dates in a year of 360 days. | days between
!DATEDIF(start_date, end_date, interval): Whole days, months or years between two dates. | age, years between, months between | DATEDIF({d}, TODAY(), "M")
YEARFRAC(start_date, end_date, [basis=0]): The years between two dates, with fractions. | age, years between | YEARFRAC({d}, TODAY(), 1)
NETWORKDAYS(start_date, end_date, [free_days]): How many working days lie between two dates. | working days, weekdays
NETWORKDAYS.INTL(start_date, end_date, [weekend=1], [free_days]): How many working days, with a weekend of your choice. | working days
WORKDAY(date, days, [free_days]): The date some working days later. | add working days
WORKDAY.INTL(date, days, [weekend=1], [free_days]): The date some working days later, with a weekend of your choice. | add working days
TIME(hour, minute, second_of_minute): A time from its parts. | make a time, clock
TIMEVALUE(text): The time that a text writes. | text to time | TIMEVALUE("17:30")
HOUR(time): The hour of a time. | hour
MINUTE(time): The minute of a time. | minute
SECOND(time): The second of a time. | second
!INTERVAL(seconds): Seconds as a duration of ISO 8601. | duration
`,
);
