package puzzleworkshop.artwork;

import puzzleworkshop.measure.Size;

/**
 * A crop with its overhang, ready to be laid on paper.
 *
 * @param width pixels across, overhang included
 * @param height pixels down, overhang included
 * @param printed what it measures on paper: finished size and overhang all round
 * @param ppi pixels per inch across the finished size
 * @param jpeg sRGB, colour at full resolution, no metadata of the original
 */
public record PrintPicture(int width, int height, Size printed, double ppi, byte[] jpeg) {}
