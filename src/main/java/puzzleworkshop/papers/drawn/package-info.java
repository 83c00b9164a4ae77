/** How a paper about money looks: its words in order, the page they are set on, and the workshop's logo. */
package puzzleworkshop.papers.drawn;
