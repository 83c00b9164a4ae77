/** What every reader of a foreign cut file gathers: lines, lines it is not sure of, remarks, and a limit on the work. */
@org.springframework.modulith.NamedInterface("found")
package puzzleworkshop.cutfiles.found;
