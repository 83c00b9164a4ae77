/** The program as people use it: started on a clean folder and driven by a real browser. */
package puzzleworkshop.walks;
