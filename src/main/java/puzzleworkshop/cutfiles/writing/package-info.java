/** Our own cut files: lines in cutting order, written as SVG, DXF and PDF. */
@org.springframework.modulith.NamedInterface("writing")
package puzzleworkshop.cutfiles.writing;
