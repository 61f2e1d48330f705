/**
 * Milk, cheese, fats and ices, one food a line; `foodTable.ts` says what the columns are.
 *
 * @source usda-sr-legacy, ashrae-refrigeration, fsis-food-safety, from-memory
 */
export const dairyFoods: string = `
milk | Milk, whole 3.25 % | whole milk, buttermilk, chocolate milk, goat milk, evaporated milk, coconut milk | 88 3 3 5 0 0.7 | -0.6 | rte chilled | discard | 7 (opened) | | 95 cylinder | usda-sr-legacy
low fat milk | Milk, 2 % | reduced fat milk, skim milk, 2% milk, 1% milk, semi skimmed milk, lactose free milk | 89 3 2 5 0 0.7 | ~-0.6 | rte chilled | discard | 7 (opened) | | 95 cylinder | usda-sr-legacy
plant milk | Oat drink | oat milk, soy milk, almond milk, rice milk, nut milk | 90 1 2 6.5 0.8 0.6 | ~-0.5 | rte chilled | discard | 7 (opened) | | 70 lump | from-memory
breast milk | Human milk | mothers milk, expressed milk, human milk | 88 1 4 7 0 0.2 | ~-0.6 | rte chilled | discard | 4 | | 50 cylinder | from-memory
infant formula | Infant formula, prepared | baby formula, formula, prepared formula, baby food | 88 1.5 3.5 7 0 0.3 | ~-0.6 | rte chilled | discard | 1 | | 50 cylinder | from-memory
half and half | Cream, half and half | light cream, coffee cream, coffee creamer, creamer, eggnog | 81 3 12 4 0 0.7 | ~-2.2 | rte chilled | discard | 3-4 | freezes badly | 70 cylinder | usda-sr-legacy
cream | Cream, heavy whipping | heavy cream, whipping cream, whipped cream, double cream | 58 2 37 3 0 0.5 | ~-2.2 | rte chilled | discard | 10 | freezes badly | 60 cylinder | usda-sr-legacy
sour cream | Sour cream | creme fraiche, crema | 73 2.4 19 4.6 0 0.5 | ~-1.5 | rte chilled | discard | 7-21 | freezes badly | 70 cylinder | from-memory
yogurt | Yogurt, plain, whole | yoghurt, greek yogurt, kefir, skyr, plain yogurt, fruit yogurt | 88 3 3 5 0 0.7 | ~-0.6 | rte chilled | discard | 7-14 | freezes badly | 70 cylinder | usda-sr-legacy
pudding | Pudding or custard | custard, flan, panna cotta, mousse, cream pie, cheesecake | 74 3 4 18 0 0.8 | ~-1.5 | rte chilled | discard | 3-4 | freezes badly | 60 lump | from-memory
butter | Butter, salted | salted butter, unsalted butter, stick butter | 16 1 81 0 0 2.1 | ~-12.0 | rte chilled | keep | 30-90 | | 32 slab | usda-sr-legacy
margarine | Margarine, stick 80 % | vegetable spread, plant butter | 17 0 81 1 0 1.9 | ~-12.0 | rte chilled | keep | 120 | | 32 slab | usda-sr-legacy
cheddar | Cheddar | cheddar cheese, hard cheese, block cheddar, provolone | 37 24 34 1 0 3.7 | -12.9 | rte chilled | keep | 21-28 | | 40 slab | usda-sr-legacy
swiss cheese | Swiss cheese | swiss, emmental, gruyere | 37 27 28 5 0 2.8 | -10.0 | rte chilled | keep | 21-28 | | 30 slab | usda-sr-legacy
parmesan | Parmesan, hard | parmesan cheese, romano, pecorino, grana, asiago, grated parmesan | 29 36 26 3 0 6.0 | ~-12.8 | rte chilled | keep | 21-28+ | | 40 slab | usda-sr-legacy
american cheese | American process cheese | process cheese, processed cheese, cheese slices, cheese singles | 40 18 32 4 0 6.8 | -12.9 | rte chilled | keep | 21-28 | | 30 slab | usda-sr-legacy
shredded cheese | Cheddar, shredded | grated cheese, mexican cheese blend, shredded cheddar, low fat cheese | 37 24 34 1 0 3.7 | ~-12.9 | rte chilled | discard | 21 | air 50 | 40 slab | usda-sr-legacy
gouda | Gouda | cheese, sliced cheese, edam, monterey jack, pepper jack, jack cheese, colby, colby jack, muenster, havarti, semi soft cheese, vegan cheese | 41 25 27 2 0 3.9 | ~-12.9 | rte chilled | discard | 21 | | 30 slab | usda-sr-legacy
mozzarella | Mozzarella, whole milk | string cheese, fresh mozzarella, burrata, soft cheese | 50 22 22 2 0 3.3 | ~-2.5 | rte chilled | discard | 7 | | 40 slab | usda-sr-legacy
feta | Feta | feta cheese, goat cheese, blue cheese, queso fresco, halloumi, paneer, cotija | 55 14 21 4 0 5.2 | ~-7.0 | rte chilled | discard | 7 | | 40 slab | usda-sr-legacy
brie | Brie | camembert, soft ripened cheese | 48 21 28 0 0 2.7 | ~-1.3 | rte chilled | discard | 7 | freezes badly | 30 slab | usda-sr-legacy
cream cheese | Cream cheese | neufchatel, mascarpone, cheese spread | 54 6 34 4 0 1.3 | ~-1.3 | rte chilled | discard | 14 | freezes badly | 40 slab | usda-sr-legacy
cottage cheese | Cottage cheese, creamed | ricotta, quark, curd cheese | 80 11 4 3 0 1.4 | -1.2 | rte chilled | discard | 7 | freezes badly | 80 cylinder | usda-sr-legacy
ice cream | Ice cream, vanilla | gelato, frozen yogurt, sorbet, sherbet, ice pops, ice lollies | 61 4 11 24 0.7 0.9 | -5.6 | frozen frozen | discard | - | air 45 | 80 lump | usda-sr-legacy
`;
