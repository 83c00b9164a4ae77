/** Figures beyond money: on time, lead times, hours, rejects, wood, stock, customers, months and years. */
package puzzleworkshop.insights.work;
