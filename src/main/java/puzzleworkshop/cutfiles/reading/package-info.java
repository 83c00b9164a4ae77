/** What every reader of a foreign cut file gathers: lines, lines it is not sure of, remarks, and a limit on the work. */
package puzzleworkshop.cutfiles.reading;
