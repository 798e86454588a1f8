/**
 * Short fragments of guides with what they bring, in our own words. `brings` holds each trigger as
 * `kind step: verdict`; a tempting fragment brings nothing, or nothing that is not covered, although
 * it holds words or figures of something that would.
 */

export interface Fragment {
  readonly name: string;
  readonly body: string;
  readonly list?: string;
  /** Further lines of the front matter. */
  readonly more?: string;
  readonly brings: readonly string[];
  readonly tempting?: true;
}

const PLATE = "Designator,Value,Description\nHS9,,bracket\n";
const OFF = "off-board: [HS9]\n";

export const FRAGMENTS: readonly Fragment[] = [
  // Drilling, grinding, sawing and sheet metal.
  {
    name: "drilling without a word",
    body: "## Case\n\n1. Mark the centres.\n2. Drill both holes with a 3 mm bit.",
    brings: ["drilling 1.2: missing"],
  },
  {
    name: "drilling after an adverb and a joining word",
    body: "## Case\n\n1. Punch the mark, then carefully drill through the lid.",
    brings: ["drilling 1.1: missing"],
  },
  {
    name: "drilling in the passive",
    body: "## Case\n\n1. The four corners must be drilled to 4.3 mm.",
    brings: ["drilling 1.1: missing"],
  },
  {
    name: "drilling told by its tool alone",
    body: "## Case\n\n1. Make the hole for the socket. [tool: drill press]",
    brings: ["drilling 1.1: missing"],
  },
  {
    name: "a drill named as tool where a hole is made",
    body: "## Case\n\n1. Make a hole of 6 mm for the switch. [tool: drill]",
    brings: ["drilling 1.1: missing"],
  },
  {
    name: "drilling in German",
    more: "language: de\n",
    body: "## Gehäuse\n\n1. Bohren Sie beide Löcher mit 3,4 mm.",
    brings: ["drilling 1.1: missing"],
  },
  {
    name: "drilling in German with the verb at the end",
    more: "language: de\n",
    body: "## Gehäuse\n\n1. Zuerst die Löcher anreißen, dann mit 3 mm bohren.",
    brings: ["drilling 1.1: missing"],
  },
  {
    name: "drilling in French",
    more: "language: fr\n",
    body: "## Boîtier\n\n1. Percez les deux trous à 3,4 mm.",
    brings: ["drilling 1.1: missing"],
  },
  {
    name: "drilling in Dutch",
    more: "language: nl\n",
    body: "## Kast\n\n1. Boor beide gaten met 3,4 mm.",
    brings: ["drilling 1.1: missing"],
  },
  {
    name: "drilling in Spanish",
    more: "language: es\n",
    body: "## Caja\n\n1. Taladre los dos agujeros a 3,4 mm.",
    brings: ["drilling 1.1: missing"],
  },
  {
    name: "drilling with a note that comes a step too late",
    body: "## Case\n\n1. Drill the lid.\n\n> **WARNING: moving parts and flying chips.** The bit catches and chips fly. Clamp the lid and wear safety glasses.\n\n2. Deburr by hand.",
    brings: ["drilling 1.1: late"],
  },
  {
    name: "drilling that only a note before the first stage speaks of",
    body: "> **WARNING: moving parts, eye injury.** Bits catch. Wear safety glasses.\n\n## Case\n\n1. Drill the lid.",
    brings: ["drilling 1.1: missing"],
  },
  {
    name: "drilling in the second of two stages, with the note in the first",
    body: "## Lid\n\n> **WARNING: moving parts, eye injury.** Bits catch and chips fly. Clamp the work.\n\n1. Drill the lid.\n\n## Bottom\n\n1. Drill the bottom.",
    brings: ["drilling 1.1: covered", "drilling 2.1: missing"],
  },
  {
    name: "sawing",
    body: "## Shaft\n\n1. Saw the shaft off at 12 mm.",
    brings: ["sawing 1.1: missing"],
  },
  {
    name: "bending a chassis",
    body: "## Chassis\n\n1. Bend the sheet metal along the line.",
    brings: ["sheet metal 1.1: missing"],
  },
  {
    name: "a drill bit as a coil former",
    body: "## Coils\n\n1. Wind ten turns on the shank of an 8 mm drill. [own: drill shank 8 mm, as a former]",
    brings: [],
    tempting: true,
  },
  {
    name: "a drill as tool on which a coil is wound",
    body: "## Coils\n\n1. Wind ten turns and slip the coil off. [tool: drill]",
    brings: [],
    tempting: true,
  },
  {
    name: "a drill that is a training exercise",
    body: "## Morse\n\n1. As a drill, send your name ten times. A daily drill keeps the hand light.",
    brings: [],
    tempting: true,
  },
  {
    name: "holes that came drilled",
    body: "## Case\n\n1. Hold the drilled panel against the front. The holes for the drill template are marked.",
    brings: [],
    tempting: true,
  },
  {
    name: "a warning not to drill",
    body: "## Case\n\n1. Do not drill the lid yet.\n2. Clamp the lid before you drill it in the next stage.",
    brings: [],
    tempting: true,
  },
  {
    name: "a drill in a list of things to fetch",
    body: "## Case\n\n1. Lay out a vice, drill and square.",
    brings: [],
    tempting: true,
  },
  {
    name: "a bore hole in German that is only named",
    more: "language: de\n",
    body: "## Gehäuse\n\n1. Stecken Sie die Schraube durch die Bohrung. Der Bohrer bleibt im Kasten, nach dem Bohren war er stumpf.",
    brings: [],
    tempting: true,
  },
  {
    name: "holes that a German kit brings drilled",
    more: "language: de\n",
    body: "## Gehäuse\n\n1. Die Löcher sind bereits gebohrt: Legen Sie die Platte auf.",
    brings: [],
    tempting: true,
  },
  {
    name: "drilling with notes at the stage's head",
    body: "## Case\n\n> **CAUTION: eye injury.** Chips fly. Wear glasses.\n\n> **WARNING: moving parts.** The bit catches. Clamp the lid.\n\n1. Mark the lid.\n2. Drill the lid.\n3. Drill the bottom.",
    brings: ["drilling 1.2: covered"],
    tempting: true,
  },
  {
    name: "drilling with an alert between the steps",
    body: "## Case\n\n1. Mark the lid.\n\n> [!CAUTION]\n> A drill that catches breaks fingers and throws chips into the eyes. Clamp the lid and wear safety glasses.\n\n2. Drill the lid.",
    brings: ["drilling 1.2: covered"],
    tempting: true,
  },
  {
    name: "bending leads towards a chassis",
    body: "## Board\n\n1. Bend the leads by 90° so that they point towards the edge where the chassis will be.",
    brings: [],
    tempting: true,
  },
  // Soldering, leads, wire, springs.
  {
    name: "the first soldered part of each board",
    list: "Designator,Value,Board\nR1,10k,a\nR2,10k,b\nR3,1k,b\n",
    body: "## A\n\n1. Fit [R1].\n\n## B\n\n1. Fit [R2].\n2. Fit [R3].",
    brings: ["soldering 1.1: missing", "soldering 2.1: missing"],
  },
  {
    name: "soldering wires",
    body: "## Wires\n\n1. Solder the two wires to the socket.",
    brings: ["soldering 1.1: missing"],
  },
  {
    name: "cutting leads",
    body: "## Board\n\n1. Turn the board over and trim the leads to 1 mm.",
    brings: ["cutting 1.1: missing"],
  },
  {
    name: "cutting a length of wire of the list",
    list: "Designator,Quantity,Value,Description\n,900 mm,CuL 0.4,enamelled copper wire\n",
    body: "## Coils\n\n1. Cut [300 mm × CuL 0.4] into three pieces.",
    brings: ["cutting 1.1: missing"],
  },
  {
    name: "a spring that is compressed",
    body: "## Key\n\n1. Compress the spring and slide it over the pin.",
    brings: ["spring 1.1: missing"],
  },
  {
    name: "soldering, fumes and leads covered by notes before the first stage",
    list: "Designator,Value\nR1,10k\n",
    body: "> **CAUTION: hot surface.** The iron burns skin. Put it in its stand.\n\n> **CAUTION: fumes.** They irritate. Air the room.\n\n> **CAUTION: eye injury.** Leads fly off. Wear safety glasses.\n\n## Board\n\n1. Solder [R1] and cut the leads.",
    brings: ["soldering 1.1: covered", "cutting 1.1: covered"],
    tempting: true,
  },
  {
    name: "words about solder that solder nothing",
    body: "## Board\n\n1. Look for a solder bridge. The solder mask is green, and a solder tag lies in bag 3.\n2. Do not solder it yet.",
    brings: [],
    tempting: true,
  },
  {
    name: "cut leads and a clip lead that are only used",
    body: "## Board\n\n1. Join the pads with a clip lead.\n2. Keep the cut leads for later.",
    brings: [],
    tempting: true,
  },
  {
    name: "a spring washer",
    body: "## Case\n\n1. Release the nut and slip a spring washer under it.",
    brings: [],
    tempting: true,
  },
  // Solvents, loads, static.
  {
    name: "cleaning with a solvent",
    body: "## Board\n\n1. Brush the flux off with isopropyl alcohol.",
    brings: ["solvent 1.1: missing"],
  },
  {
    name: "a solvent named as a consumable",
    body: "## Board\n\n1. Clean the joints. [own: acetone]",
    brings: ["solvent 1.1: missing"],
  },
  {
    name: "a heavy transformer of the list",
    list: "Designator,Value,Description\nT1,2 x 30 V,toroidal transformer 300 VA 3.4 kg\n",
    more: "off-board: [T1]\n",
    body: "## Power\n\n1. Bolt the transformer down. [T1]",
    brings: ["lifting 1.1: missing", "voltage 1.1: missing"],
  },
  {
    name: "a MOSFET taken out of its bag",
    list: "Designator,Value,Description\nQ1,IRF510,N-channel MOSFET\n",
    more: "off-board: [Q1]\n",
    body: "## Output\n\n1. Screw the transistor to the heat sink. [Q1]",
    brings: ["static 1.1: missing"],
  },
  {
    name: "bipolar transistors and a regulator",
    list: "Designator,Value,Description\nQ1,BC547,NPN transistor\nU1,7805,voltage regulator\n",
    more: "off-board: [Q1, U1]\n",
    body: "## Output\n\n1. Fit [Q1] and [U1].",
    brings: [],
    tempting: true,
  },
  {
    name: "a weight that is no load",
    list: "Designator,Value,Description\nT1,audio,output transformer 120 g\n",
    more: "off-board: [T1]\n",
    body: "## Case\n\n1. Mount the transformer. [T1]\n2. Wipe the case with a heavy cloth.",
    brings: [],
    tempting: true,
  },
  {
    name: "a static note before the first stage",
    list: "Designator,Value\nU1,CD4017\n",
    more: "off-board: [U1]\n",
    body: "> **NOTICE: static discharge.** A spark destroys chips. Wear a wrist strap.\n\n## Chips\n\n1. Push the chip in. [insert: U1]",
    brings: ["static 1.1: covered"],
    tempting: true,
  },
  // Voltage, charge, heat.
  {
    name: "two rails of 40 V that are 80 V apart",
    more: "supply: { VP: 40 V, VM: -40 V }\n",
    body: "## First power\n\n1. Set the current limit to 0.1 A.\n2. Switch the supply on.",
    brings: ["voltage 1.2: missing"],
  },
  {
    name: "a reading of 80 V",
    body: "## Test\n\n1. Measure at the large capacitor: {read V(C1) = 80 V ± 5 %}.",
    brings: ["voltage 1.1: missing"],
  },
  {
    name: "an alternating voltage above 42.4 V peak",
    more: "figures: { Vac(T1): 36 V }\n",
    body: "## First power\n\n1. Switch on.",
    brings: ["voltage 1.1: missing"],
  },
  {
    name: "mains words",
    body: "## Mains\n\n1. Plug the kit into the wall socket.",
    brings: ["voltage 1.1: missing"],
  },
  {
    name: "a mains voltage",
    body: "## Mains\n\n1. Connect the primary to 230 V.",
    brings: ["voltage 1.1: missing"],
  },
  {
    name: "mains in German",
    more: "language: de\n",
    body: "## Netz\n\n1. Stecken Sie den Netzstecker in die Steckdose.",
    brings: ["voltage 1.1: missing"],
  },
  {
    name: "a mains inlet of the list",
    list: "Designator,Value,Description\nJ1,IEC inlet,mains inlet with fuse\n",
    more: "off-board: [J1]\n",
    body: "## Rear\n\n1. Screw the inlet to the rear panel. [J1]",
    brings: ["voltage 1.1: missing"],
  },
  {
    name: "a charged reservoir capacitor",
    list: "Designator,Value,Voltage,Description\nC1,10000u,63 V,electrolytic\n",
    more: "supply: { VCC: 50 V }\noff-board: [C1]\n",
    body: "## Supply\n\n1. Clamp the capacitor. [C1]\n\n## First power\n\n1. Switch the supply on.",
    brings: ["stored charge 2.1: missing"],
  },
  {
    name: "a heat sink under power",
    list: PLATE.replace("bracket", "heat sink"),
    more: OFF,
    body: "## Output\n\n1. Screw on the heat sink. [HS9]\n\n## First power\n\n1. Switch on.",
    brings: ["hot part 2.1: missing"],
  },
  {
    name: "a resistor near its rating",
    list: "Designator,Value,Power\nR50,100R,2 W\n",
    more: "figures: { P(R50): 1.6 W }\noff-board: [R50]\n",
    body: "## Load\n\n1. Clamp it. [R50]\n2. Switch on.",
    brings: ["hot part 1.2: missing"],
  },
  {
    name: "R60 and a capacitor rated 60 V",
    list: "Designator,Value,Voltage\nR60,1k,\nC60,100u,63 V\n",
    more: "supply: { VCC: 12 V }\noff-board: [R60, C60]\n",
    body: "## Board\n\n1. Fit [R60] and the 60 V capacitor [C60]. Its rating of 63 V is ample.\n2. Switch on.",
    brings: [],
    tempting: true,
  },
  {
    name: "a relay whose contacts stand mains",
    list: "Designator,Value,Description\nK1,12 V,relay with contacts for 230 V 8 A\n",
    more: "off-board: [K1]\n",
    body: "## Relay\n\n1. Fit the relay. [K1] Its contacts are rated for 230 V.",
    brings: [],
    tempting: true,
  },
  {
    name: "a wall adapter",
    body: "## Power\n\n1. Plug the 12 V adapter into the wall socket.",
    brings: [],
    tempting: true,
  },
  {
    name: "mains that is kept away",
    body: "## Test\n\n1. Pull the mains plug.\n2. Listen for mains hum in the phones.",
    brings: [],
    tempting: true,
  },
  {
    name: "a fuse holder in a kit for 12 V",
    list: "Designator,Value,Description\nXF1,,fuse holder 250 V\n",
    more: "supply: { VCC: 12 V }\noff-board: [XF1]\n",
    body: "## Power\n\n1. Fit the fuse holder. [XF1]",
    brings: [],
    tempting: true,
  },
  {
    name: "a capacitor that its bleeder empties at once",
    list: "Designator,Value,Voltage\nC1,470u,100 V\n",
    more: "supply: { VCC: 58 V }\nfigures: { bleeder(C1): 1 kΩ }\noff-board: [C1]\n",
    body: "## Supply\n\n1. Clamp it. [C1]\n2. Switch on.",
    brings: [],
    tempting: true,
  },
  {
    name: "switching on the iron and the meter",
    list: PLATE.replace("bracket", "heat sink"),
    more: OFF,
    body: "## Output\n\n1. Screw on the heat sink. [HS9]\n2. Switch on the soldering iron.\n3. Turn the multimeter on. Do not switch on the supply.",
    brings: [],
    tempting: true,
  },
  {
    name: "a voltage below the limit",
    more: "supply: { VCC: 24 V ± 10 % }\n",
    body: "## First power\n\n1. Switch on and measure {read V(TP1) = 24 V ± 10 %}.",
    brings: [],
    tempting: true,
  },
  {
    name: "shock covered in the stage where the power comes on",
    more: "supply: { VP: 40 V, VM: -40 V }\n",
    body: "## First power\n\n> **WARNING: electric shock.** 80 V between the rails can kill. Measure with one hand.\n\n1. Switch the supply on.",
    brings: ["voltage 1.1: covered"],
    tempting: true,
  },
  {
    name: "headings, plain text and notes that speak of drilling",
    body: "## Drill the case\n\nIn this stage you drill the case.\n\n> **NOTICE: scratches.** Drill slowly, or the paint flakes. Use tape.\n\n1. Mark the case.",
    brings: [],
    tempting: true,
  },
  // The same told in other words and languages.
  {
    name: "drilling as the purpose of a sentence",
    body: "## Case\n\n1. Now it is time to drill the front.\n2. Using a 3 mm bit, drill out the corners.",
    brings: ["drilling 1.1: missing"],
  },
  {
    name: "excess leads that are snipped off",
    body: "## Board\n\n1. Snip off the excess.",
    brings: ["cutting 1.1: missing"],
  },
  {
    name: "a part of a table that is soldered",
    list: "Designator,Value\nR1,10k\n",
    body: "## Board\n\n| Value | Fit |\n|---|---|\n| 10 kΩ | [R1] |",
    brings: ["soldering 1.1: missing"],
  },
  {
    name: "soldering and cutting in German",
    more: "language: de\n",
    body: "## Platine\n\n1. Die Stiftleiste einlöten und die überstehenden Drahtenden abschneiden.",
    brings: ["soldering 1.1: missing", "cutting 1.1: missing"],
  },
  {
    name: "soldering and cutting in French",
    more: "language: fr\n",
    body: "## Platine\n\n1. Soudez le connecteur, puis coupez les pattes à ras.",
    brings: ["soldering 1.1: missing", "cutting 1.1: missing"],
  },
  {
    name: "soldering and cutting in Dutch",
    more: "language: nl\n",
    body: "## Print\n\n1. Soldeer de connector vast en knip de draadjes af.",
    brings: ["soldering 1.1: missing", "cutting 1.1: missing"],
  },
  {
    name: "soldering and cutting in Spanish",
    more: "language: es\n",
    body: "## Placa\n\n1. Suelde el conector y corte las patillas.",
    brings: ["soldering 1.1: missing", "cutting 1.1: missing"],
  },
  {
    name: "mains in French",
    more: "language: fr\n",
    body: "## Secteur\n\n1. Branchez le cordon dans la prise de courant.",
    brings: ["voltage 1.1: missing"],
  },
  {
    name: "mains in Dutch",
    more: "language: nl\n",
    body: "## Net\n\n1. Steek de netstekker in het stopcontact.",
    brings: ["voltage 1.1: missing"],
  },
  {
    name: "mains in Spanish",
    more: "language: es\n",
    body: "## Red\n\n1. Conecte el cable de red a la toma de corriente.",
    brings: ["voltage 1.1: missing"],
  },
  {
    name: "rails of 40 V switched on in German",
    more: "language: de\nsupply: { VP: 40 V, VM: -40 V }\n",
    body: "## Inbetriebnahme\n\n1. Schalten Sie das Netzgerät ein.",
    brings: ["voltage 1.1: missing"],
  },
  {
    name: "a solvent in German",
    more: "language: de\n",
    body: "## Platine\n\n1. Die Platine mit Isopropanol abwischen.",
    brings: ["solvent 1.1: missing"],
  },
  {
    name: "notes in German that cover soldering, fumes and leads",
    more: "language: de\n",
    body: "> **VORSICHT: heiße Oberfläche.** Der Lötkolben verbrennt die Haut. Legen Sie ihn in den Ständer.\n\n> **VORSICHT: Dämpfe.** Sie reizen die Lunge. Lüften Sie.\n\n> **VORSICHT: Augenverletzung.** Drahtenden fliegen weg. Tragen Sie eine Schutzbrille.\n\n## Platine\n\n1. Die Stiftleiste einlöten und die Drahtenden abschneiden.",
    brings: ["soldering 1.1: covered", "cutting 1.1: covered"],
    tempting: true,
  },
  {
    name: "a French warning not to drill, and a drill that is put away",
    more: "language: fr\n",
    body: "## Boîtier\n\n1. Ne percez pas encore le couvercle.\n2. Rangez la perceuse avant de continuer.",
    brings: [],
    tempting: true,
  },
  {
    name: "a Dutch drill bit as a former",
    more: "language: nl\n",
    body: "## Spoelen\n\n1. Wikkel tien windingen om een boor van 8 mm.",
    brings: [],
    tempting: true,
  },
  {
    name: "a Spanish drill that is only laid out",
    more: "language: es\n",
    body: "## Caja\n\n1. Prepare el taladro, pero no taladre todavía.",
    brings: [],
    tempting: true,
  },
  {
    name: "a guide in a language without word lists",
    more: "language: fi\n",
    list: "Designator,Value\nR1,10k\n",
    body: "## Kotelo\n\n1. Poraa reiät ja juota [R1].",
    brings: [],
    tempting: true,
  },
  {
    name: "parts pushed into a breadboard",
    list: "Designator,Value\nR1,10k\n",
    body: "## Test\n\n1. Push [R1] into the breadboard.",
    brings: [],
    tempting: true,
  },
  {
    name: "a supply that is told to stay off, and a knob that is turned on its shaft",
    list: PLATE.replace("bracket", "heat sink"),
    more: OFF,
    body: "## Output\n\n1. Screw on the heat sink. [HS9]\n2. Turn the knob on RV1 to zero, and switch to the 20 V range.\n3. Make sure that the supply is switched off.",
    brings: [],
    tempting: true,
  },
  {
    name: "reading what a voltage must stay below",
    body: "## Test\n\n1. Measure the hum: {read V(TP1) < 80 V}.",
    brings: [],
    tempting: true,
  },
];
