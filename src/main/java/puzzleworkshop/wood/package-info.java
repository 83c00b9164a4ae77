/**
 * Wood over a year: what is asked for, what a remainder is worth by that, what to keep and which board to buy.
 * Lower rooms declare what they ask for ({@code sheets.find.RemainderWorth}), this room answers.
 */
@org.springframework.modulith.ApplicationModule
package puzzleworkshop.wood;
