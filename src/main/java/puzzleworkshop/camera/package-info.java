/**
 * A phone's photo as a measuring tool: markers of a printed sheet give scale, lens and viewpoint, and with them the outline of
 * what lies on it in millimetres. Pure functions that know no framework; lengths in millimetres, places in the photo in pixels.
 */
@org.springframework.modulith.ApplicationModule(
        displayName = "Camera",
        allowedDependencies = {"measure", "geometry", "display"})
package puzzleworkshop.camera;
