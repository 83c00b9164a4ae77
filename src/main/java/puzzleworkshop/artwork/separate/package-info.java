/** Files whose reading cannot be stopped are read by a process of its own, which is ended by bounds on time and memory. */
@org.springframework.modulith.NamedInterface("separate")
package puzzleworkshop.artwork.separate;
