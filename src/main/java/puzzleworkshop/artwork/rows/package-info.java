/** Pictures decoded row by row in bounded memory, whatever their format: a picture is never held whole to be read. */
@org.springframework.modulith.NamedInterface("rows")
package puzzleworkshop.artwork.rows;
