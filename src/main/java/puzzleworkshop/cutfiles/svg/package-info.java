/** Lines of SVG files: tree, style sheets, units, transforms, clips. Nothing outside the file is ever fetched. */
package puzzleworkshop.cutfiles.svg;
