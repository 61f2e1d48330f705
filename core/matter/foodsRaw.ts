/**
 * Raw meat, fish and eggs, one food a line; `foodTable.ts` says what the columns are.
 *
 * @source usda-sr-legacy, ashrae-refrigeration, fsis-food-safety, from-memory
 */
export const rawFoods: string = `
ground beef | Ground beef 80/20, raw | hamburger, burgers, burger patties, ground meat, minced beef, mince, ground pork, ground lamb, ground venison, raw meatballs | 62 17 20 0 0 0.8 | ~-1.7 | raw chilled | discard | 1-2 | raw animal | 20 slab | usda-sr-legacy
beef steak | Beef top sirloin steak, lean, raw | steak, beef, raw beef, sirloin, ribeye, strip steak, flank steak, fajita beef, roast, beef roast, stew meat, carne asada, tri tip, bison, veal | 73 22 4 0 0 1.1 | -1.7 | raw chilled | discard | 3-5 | raw animal | 25 slab | usda-sr-legacy
lamb | Lamb, composite lean, raw | lamb chops, leg of lamb, mutton, goat | 73 20 5 0 0 1.1 | -1.9 | raw chilled | discard | 3-5 | raw animal | 25 slab | usda-sr-legacy
pork | Pork loin, lean, raw | pork loin, pork chops, pork tenderloin, pork shoulder, pork roast, ribs, spare ribs, raw pork | 72 21 6 0 0 1.1 | ~-2.2 | raw chilled | discard | 3-5 | raw animal | 25 slab | usda-sr-legacy
chicken breast | Chicken breast, meat and skin, raw | chicken, raw chicken, whole chicken, chicken pieces, chicken wings, poultry, kebabs, chicken kebabs, duck, cornish hen | 69 21 9 0 0 1.0 | -2.8 | raw chilled | discard | 1-2 | raw animal | 30 slab | usda-sr-legacy
chicken thigh | Chicken thigh, meat only, raw | chicken thighs, chicken legs, drumsticks, chicken drumsticks, boneless chicken thighs | 76 20 4 0 0 0.9 | ~-2.8 | raw chilled | discard | 1-2 | raw animal | 30 slab | usda-sr-legacy
ground turkey | Ground turkey, raw | turkey, raw turkey, ground chicken, turkey burgers, whole turkey, turkey breast raw | 72 20 8 0 0 1.0 | -2.8 | raw chilled | discard | 1-2 | raw animal | 20 slab | usda-sr-legacy
sausage | Italian sausage, pork, raw | sausages, raw sausage, bratwurst, brats, breakfast sausage, chorizo, fresh chorizo, pork sausage, sausage links | 51 14 31 1 0 2.7 | ~-1.7 | raw chilled | discard | 1-2 | raw animal | 30 cylinder | usda-sr-legacy
bacon | Bacon, raw | raw bacon, pancetta, rashers, turkey bacon | 44 13 40 1 0 2.2 | ~-2.2 | raw chilled | discard | 7 | raw animal | 20 slab | usda-sr-legacy
salmon | Salmon, sockeye, raw | fatty fish, oily fish, salmon fillet, char, steelhead, mackerel, herring, sardines fresh, bluefish, sablefish | 72 23 5 0 0 1.3 | ~-2.2 | raw chilled | discard | 1-2 | raw animal | 25 slab | usda-sr-legacy
trout | Trout, brook, raw | brook trout, rainbow trout, brown trout, grayling, whitefish | 76 21 3 0 0 1.3 | ~-2.2 | raw chilled | discard | 1-2 | raw animal | 30 slab | usda-sr-legacy
cod | Cod, raw | lean fish, fish, white fish, raw fish, fish fillets, fresh fish, walleye, perch, bass, pike, crappie, panfish, bluegill, catfish, halibut, haddock, pollock, tilapia, snapper, rockfish, sole, flounder, catch | 81.2 17.8 0.7 0 0 1.2 | -2.2 | raw chilled | discard | 1-2 | raw animal | 25 slab | from-memory
tuna steak | Tuna, raw | raw tuna, tuna, ahi, swordfish, mahi mahi, marlin | 68.1 23.3 4.9 0 0 1.2 | -2.2 | raw chilled | discard | 1-2 | raw animal | 25 slab | from-memory
shrimp | Shrimp, raw | prawns, shellfish, seafood, scallops, crab, lobster, crayfish, squid, calamari, octopus, oysters, clams, mussels | 78 20 1 0 0 1.2 | -2.2 | raw chilled | discard | 1-2 | raw animal | 20 lump | usda-sr-legacy
game meat | Venison, lean, raw | game, venison, deer, elk, moose, antelope, caribou, wild boar, wild pig, quarter, carcass, game bird, grouse, pheasant, rabbit | 73 23 2.5 0 0 1.2 | ~-1.7 | raw chilled | discard | 3-5 | raw animal | 100 lump | from-memory
egg | Egg, whole, raw, in shell | eggs, shell eggs, fresh eggs, raw eggs, dozen eggs | 76 13 10 1 0 1.1 | -0.6 | raw chilled | discard | 21-35 | raw animal, freezes badly, air 3 | 44 lump | usda-sr-legacy
liquid egg | Egg, whole, out of the shell | liquid eggs, carton eggs, egg whites, egg yolks, beaten eggs, scrambled egg mix, egg product | 76 13 10 1 0 1.1 | ~-0.6 | raw chilled | discard | 3 (opened) | raw animal | 70 lump | usda-sr-legacy
`;
