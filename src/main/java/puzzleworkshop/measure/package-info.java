/**
 * Quantities with their units: lengths, areas, money, shares, minutes, speeds. Immutable records that know no
 * framework; every other room counts with these.
 */
@org.springframework.modulith.ApplicationModule(
        displayName = "Measure",
        allowedDependencies = {})
package puzzleworkshop.measure;
