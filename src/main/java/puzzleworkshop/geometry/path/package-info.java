/** Cut lines as curves: segments, their length, their text. */
@org.springframework.modulith.NamedInterface("path")
package puzzleworkshop.geometry.path;
