/** Print runs as files for the printer, at exact size. */
@org.springframework.modulith.NamedInterface("pdf")
package puzzleworkshop.printing.pdf;
