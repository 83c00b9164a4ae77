/** At the bench: large targets for wet and dusty hands, stage by stage, live on every open screen. */
@org.springframework.modulith.NamedInterface("ui")
package puzzleworkshop.bench.ui;
