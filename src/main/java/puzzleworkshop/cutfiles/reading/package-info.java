/** Foreign cut files: SVG and DXF read into lines in millimetres. */
@org.springframework.modulith.NamedInterface("reading")
package puzzleworkshop.cutfiles.reading;
