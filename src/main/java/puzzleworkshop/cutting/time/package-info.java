/** How long a cut takes under the limits of the machine. */
@org.springframework.modulith.NamedInterface("time")
package puzzleworkshop.cutting.time;
