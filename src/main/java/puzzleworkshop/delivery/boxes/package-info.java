/** What a puzzle is packed in, and what it weighs. */
@org.springframework.modulith.NamedInterface("boxes")
package puzzleworkshop.delivery.boxes;
