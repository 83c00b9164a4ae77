/** What is inside a file, found before anything is decoded: its kind by content, its size, its colours, its limits. */
@org.springframework.modulith.NamedInterface("reading")
package puzzleworkshop.artwork.reading;
