/** What pages are put together from: head, section, facts, small words, a note, what stands where nothing is yet. */
@org.springframework.modulith.NamedInterface("blocks")
package puzzleworkshop.display.blocks;
