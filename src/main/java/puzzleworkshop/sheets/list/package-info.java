/** The rack as a list: files in and out, labels, stock-taking. */
@org.springframework.modulith.NamedInterface("list")
package puzzleworkshop.sheets.list;
