/** Lines of DXF files in text form: units, layers, blocks, entities. */
package puzzleworkshop.cutfiles.dxf;
