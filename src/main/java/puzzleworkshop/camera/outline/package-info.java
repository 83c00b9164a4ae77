/** The outline of boards in a photo, with its uncertainty, or a sentence that says why there is none. */
@org.springframework.modulith.NamedInterface("outline")
package puzzleworkshop.camera.outline;
