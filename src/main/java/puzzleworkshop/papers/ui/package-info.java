/** Money and papers on an order's page, and what stands on papers in Set-up. */
@org.springframework.modulith.NamedInterface("ui")
package puzzleworkshop.papers.ui;
