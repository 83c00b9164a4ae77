package puzzleworkshop.camera.model;

/**
 * One photo's view of a flat sheet: lens, focal length and the camera's place. The sheet is the plane z = 0 with x to the right
 * and y down; z grows away from the camera, so that the top of a board of thickness t lies at z = −t.
 *
 * @param focal in pixels
 * @param centreU of the lens in the photo
 * @param centreV of the lens in the photo
 * @param lens its distortion
 * @param turn rows of the rotation from sheet to camera, nine numbers
 * @param shift from sheet to camera, in mm
 */
public record View(double focal, double centreU, double centreV, Lens lens, double[] turn, double[] shift) {

    /** Where a point of the sheet's space is seen, in pixels, into out[0] and out[1]; false when it lies behind the camera. */
    public boolean project(double x, double y, double z, double[] out) {
        double cz = turn[6] * x + turn[7] * y + turn[8] * z + shift[2];
        if (cz <= 1) {
            return false;
        }
        double cx = (turn[0] * x + turn[1] * y + turn[2] * z + shift[0]) / cz;
        double cy = (turn[3] * x + turn[4] * y + turn[5] * z + shift[1]) / cz;
        lens.distort(cx, cy, out);
        out[0] = focal * out[0] + centreU;
        out[1] = focal * out[1] + centreV;
        return true;
    }

    /** The point of the plane at height z that is seen at a place in the photo, in mm, into out[0] and out[1]. */
    public void onPlane(double u, double v, double z, double[] out) {
        lens.undistort((u - centreU) / focal, (v - centreV) / focal, out);
        double x = out[0];
        double y = out[1];
        // the ray in the sheet's space: turn transposed times (x, y, 1)
        double dx = turn[0] * x + turn[3] * y + turn[6];
        double dy = turn[1] * x + turn[4] * y + turn[7];
        double dz = turn[2] * x + turn[5] * y + turn[8];
        double[] eye = eye();
        double far = (z - eye[2]) / dz;
        out[0] = eye[0] + far * dx;
        out[1] = eye[1] + far * dy;
    }

    /** The camera's place in the sheet's space; its z is negative, above the sheet. */
    public double[] eye() {
        double[] eye = new double[3];
        for (int i = 0; i < 3; i++) {
            eye[i] = -(turn[i] * shift[0] + turn[3 + i] * shift[1] + turn[6 + i] * shift[2]);
        }
        return eye;
    }

    /** Pixels in the photo for one mm on the plane z = 0 around a point, the smaller of both directions. */
    public double pixelsPerMm(double x, double y) {
        double[] at = new double[2];
        double[] right = new double[2];
        double[] down = new double[2];
        if (!project(x, y, 0, at) || !project(x + 1, y, 0, right) || !project(x, y + 1, 0, down)) {
            return 0;
        }
        return Math.min(Math.hypot(right[0] - at[0], right[1] - at[1]), Math.hypot(down[0] - at[0], down[1] - at[1]));
    }

    /** The rotation about an axis (its direction) by an angle (its length): Rodrigues' formula. */
    public static double[] rotation(double ax, double ay, double az) {
        double angle = Math.sqrt(ax * ax + ay * ay + az * az);
        double s = angle < 1e-9 ? 1 : Math.sin(angle) / angle;
        double c = angle < 1e-9 ? 0.5 : (1 - Math.cos(angle)) / (angle * angle);
        double cos = Math.cos(angle);
        return new double[] {
            cos + c * ax * ax,
            c * ax * ay - s * az,
            c * ax * az + s * ay,
            c * ax * ay + s * az,
            cos + c * ay * ay,
            c * ay * az - s * ax,
            c * ax * az - s * ay,
            c * ay * az + s * ax,
            cos + c * az * az
        };
    }

    /** Product of two rotations, three rows each. */
    public static double[] times(double[] a, double[] b) {
        double[] product = new double[9];
        for (int i = 0; i < 3; i++) {
            for (int j = 0; j < 3; j++) {
                product[3 * i + j] = a[3 * i] * b[j] + a[3 * i + 1] * b[3 + j] + a[3 * i + 2] * b[6 + j];
            }
        }
        return product;
    }
}
