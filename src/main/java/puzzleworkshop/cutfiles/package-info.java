/**
 * Cut files drawn elsewhere: read, inspected for doubled, crossing and open lines, and cleaned. Knows only geometry and
 * measures.
 */
@org.springframework.modulith.ApplicationModule
package puzzleworkshop.cutfiles;
