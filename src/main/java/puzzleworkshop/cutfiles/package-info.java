/**
 * Cut files drawn elsewhere: read, inspected for doubled, crossing and open lines, and cleaned. Knows only geometry,
 * measures and how a machine is spoken to.
 */
@org.springframework.modulith.ApplicationModule
package puzzleworkshop.cutfiles;
