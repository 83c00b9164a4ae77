/** What was given to the laser: the file's bytes with their digest, its form, and the settings in words. */
@org.springframework.modulith.NamedInterface("given")
package puzzleworkshop.placing.given;
