/** What tests of several rooms lean on: one real PostgreSQL for the whole run, cleaned before each test class. */
package puzzleworkshop.support;
