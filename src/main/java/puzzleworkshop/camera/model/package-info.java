/** How a camera sees a flat sheet: lens, viewpoint, plane to plane, and how they are found from known points. */
@org.springframework.modulith.NamedInterface("model")
package puzzleworkshop.camera.model;
